package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.kitchen.Shelf;
import tamis.engine.quantity.Quantity;

/** What every store must keep to. */
abstract class StoreContract {
  protected Store store;

  protected abstract Store open();

  @BeforeEach
  void open_the_store() {
    store = open();
  }

  @AfterEach
  void close_the_store() {
    store.close();
  }

  @Test
  void a_document_is_read_as_it_was_written() {
    Stored stored = store.create(cream("cream", "Coffee cream"), "local");
    assertThat(stored.number()).isEqualTo(1);
    Stored read = store.read(Kind.FORMULA, "cream");
    assertThat(read.document().json()).contains("Coffee cream").contains("\"150 g\"");
    assertThat(read.author()).isEqualTo("local");
  }

  @Test
  void an_id_is_created_once() {
    store.create(cream("cream", "a"), "local");
    refused(FaultCode.EXISTS, () -> store.create(cream("cream", "b"), "local"));
    assertThat(store.revision()).isEqualTo(1);
  }

  @Test
  void a_replaced_revision_stays_as_it_was() {
    store.create(cream("cream", "first"), "local");
    store.replace(cream("cream", "second"), 1, "local");
    assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(2);
    assertThat(store.read(Kind.FORMULA, "cream", 1).document().title()).isEqualTo("first");
    assertThat(store.revisions(Kind.FORMULA, "cream")).hasSize(2);
  }

  @Test
  void a_stale_replacement_changes_nothing() {
    store.create(cream("cream", "first"), "local");
    store.replace(cream("cream", "second"), 1, "local");
    refused(FaultCode.STALE, () -> store.replace(cream("cream", "third"), 1, "local"));
    assertThat(store.read(Kind.FORMULA, "cream").document().title()).isEqualTo("second");
  }

  @Test
  void numbers_go_on_after_a_delete() {
    store.create(cream("cream", "first"), "local");
    store.delete(Kind.FORMULA, "cream", 1, "local");
    assertThat(store.read(Kind.FORMULA, "cream")).isNull();
    assertThat(store.read(Kind.FORMULA, "cream", 1).document().title()).isEqualTo("first");
    assertThat(store.create(cream("cream", "again"), "local").number()).isEqualTo(3);
  }

  @Test
  void a_formula_that_another_uses_is_not_deleted() {
    store.create(cream("cream", "Cream"), "local");
    store.create(Document.of(formula("Cake", line(null, "cream", "200 g")), "cake"), "local");
    assertThatThrownBy(() -> store.delete(Kind.FORMULA, "cream", 1, "local"))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("used by cake");
    store.delete(Kind.FORMULA, "cake", 1, "local");
    store.delete(Kind.FORMULA, "cream", 1, "local");
  }

  @Test
  void pages_hold_every_document_once_also_while_others_come() {
    for (int i = 0; i < 25; i++) {
      store.create(cream("cream-" + (char) ('a' + i), "Cream"), "local");
    }
    List<String> seen = new ArrayList<>();
    String after = null;
    do {
      Listed page = store.list(Kind.FORMULA, "", 10, after);
      page.rows().forEach(row -> seen.add(row.id()));
      store.create(cream("aa-" + seen.size(), "Earlier in the order"), "local");
      after = page.next();
    } while (after != null);
    assertThat(seen).hasSize(25).doesNotHaveDuplicates();
  }

  @Test
  void words_find_by_title_and_ingredient() {
    store.create(cream("cream", "Coffee meringue"), "local");
    store.create(Document.of(formula("Plain cake", line("butter", null, "1 kg")), "cake"), "local");
    assertThat(store.list(Kind.FORMULA, "COFFEE mer", 10, null).rows()).hasSize(1);
    assertThat(store.list(Kind.FORMULA, "butter", 10, null).rows().get(0).id()).isEqualTo("cake");
    assertThat(store.list(Kind.FORMULA, "butter coffee", 10, null).rows()).isEmpty();
  }

  @Test
  void a_shelf_does_not_change() {
    store.create(cream("cream", "first"), "local");
    Shelf before = store.shelf();
    store.replace(cream("cream", "second"), 1, "local");
    store.create(cream("later", "later"), "local");
    assertThat(before.formula("cream", null).title()).isEqualTo("first");
    assertThat(before.formula("later", null)).isNull();
    assertThat(before.formula("cream", 2)).isNull();
    assertThat(store.shelf().formula("cream", null).title()).isEqualTo("second");
    assertThat(store.shelf().formula("cream", 1).title()).isEqualTo("first");
  }

  @Test
  void sixteen_writers_lose_no_update() throws Exception {
    store.create(cream("cream", "0"), "local");
    ExecutorService threads = Executors.newFixedThreadPool(16);
    try {
      List<Callable<Integer>> writers = new ArrayList<>();
      for (int i = 0; i < 16; i++) {
        String author = "writer-" + i;
        writers.add(() -> writes(author));
      }
      int written = 0;
      for (Future<Integer> writer : threads.invokeAll(writers)) {
        written += writer.get();
      }
      assertThat(store.revisions(Kind.FORMULA, "cream")).hasSize(written + 1);
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(written + 1);
    } finally {
      threads.shutdownNow();
    }
  }

  private int writes(String author) {
    int written = 0;
    for (int i = 0; i < 20; i++) {
      int expected = store.read(Kind.FORMULA, "cream").number();
      try {
        store.replace(cream("cream", author + " " + i), expected, author);
        written++;
      } catch (Refusal stale) {
        assertThat(stale.faults().get(0).code()).isEqualTo(FaultCode.STALE);
      }
    }
    return written;
  }

  protected static Document cream(String id, String title) {
    return Document.of(formula(title, line("egg-white", null, "150 g")), id);
  }

  private static Formula formula(String title, Line line) {
    return new Formula(
        null,
        title,
        null,
        List.of(line),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
  }

  private static Line line(String ingredient, String formula, String quantity) {
    return new Line(
        ingredient == null ? null : IngredientRef.parse(ingredient),
        formula == null ? null : FormulaRef.parse(formula),
        Quantity.parse(quantity),
        null,
        null,
        null,
        null,
        null,
        null);
  }

  private static void refused(FaultCode code, Runnable call) {
    assertThatThrownBy(call::run)
        .isInstanceOfSatisfying(
            Refusal.class, refusal -> assertThat(refusal.faults().get(0).code()).isEqualTo(code));
  }
}
