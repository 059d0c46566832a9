package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Shelf;
import tamis.engine.trial.Observation;

/** What every store must keep to: documents, their revisions, shelves and trials. */
abstract class StoreContract extends SearchContract {
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
  void a_shelf_knows_when_its_revision_was_written() {
    assertThat(store.shelf().written()).isNull();
    store.create(cream("taken", "Taken"), "local");
    Shelf before = store.shelf();
    Instant first = store.read(Kind.FORMULA, "taken").written();
    assertThat(before.written()).isEqualTo(first);
    refused(FaultCode.EXISTS, () -> store.create(cream("taken", "Again"), "local"));
    store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
    store.observe("t1", observation("o2", "112 °C"), "local");
    writtenIs(first);
    Stored second = store.replace(cream("taken", "Second"), 1, "local");
    assertThat(second.written()).isAfterOrEqualTo(first);
    writtenIs(second.written());
    assertThat(before.written()).isEqualTo(first);
    store.delete(Kind.FORMULA, "taken", 2, "local");
    writtenIs(store.revisions(Kind.FORMULA, "taken").get(2).written());
  }

  /** To who wrote it, and to who looks it up. */
  private void writtenIs(Instant moment) {
    assertThat(store.shelf().written()).isEqualTo(moment);
    if (store instanceof SqlStore sql) {
      assertThat(sql.database().read(Counters.At::read).written()).isEqualTo(moment);
    }
  }

  @Test
  void sixteen_writers_lose_no_update() throws Exception {
    store.create(cream("cream", "0"), "local");
    int written = race(() -> store, () -> store);
    assertThat(store.revisions(Kind.FORMULA, "cream")).hasSize(written + 1);
    assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(written + 1);
    assertThat(store.revision()).isEqualTo(written + 1);
  }

  /** Sixteen writers, half of them at each store; how many of their writes were answered. */
  protected static int race(Supplier<Store> one, Supplier<Store> other) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(16);
    try {
      List<Callable<Integer>> writers = new ArrayList<>();
      for (int i = 0; i < 16; i++) {
        String author = "writer-" + i;
        Store at = i % 2 == 0 ? one.get() : other.get();
        writers.add(() -> writes(at, author));
      }
      int written = 0;
      for (Future<Integer> writer : threads.invokeAll(writers)) {
        written += writer.get();
      }
      assertThat(written).isPositive();
      return written;
    } finally {
      threads.shutdownNow();
    }
  }

  private static int writes(Store store, String author) {
    int written = 0;
    for (int i = 0; i < 10; i++) {
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

  @Test
  void a_formula_whose_part_is_gone_is_not_kept() {
    refused(
        FaultCode.UNKNOWN_FORMULA,
        () ->
            store.create(Document.of(formula("Cake", line(null, "cream", "200 g")), "cake"), "a"));
    assertThat(store.revision()).isZero();
  }

  @Test
  void a_deleted_revision_is_not_replaced() {
    store.create(cream("cream", "Coffee cream"), "local");
    store.delete(Kind.FORMULA, "cream", 1, "local");
    refused(FaultCode.NOT_FOUND, () -> store.replace(cream("cream", "b"), 1, "local"));
    refused(FaultCode.NOT_FOUND, () -> store.replace(cream("cream", "b"), 2, "local"));
    store.create(cream("cream", "Again"), "local");
    refused(FaultCode.STALE, () -> store.replace(cream("cream", "b"), 2, "local"));
    assertThat(store.revision()).isEqualTo(3);
  }

  @Test
  void writes_of_many_have_their_own_outcomes() throws Exception {
    store.create(cream("taken", "Taken"), "local");
    ExecutorService threads = Executors.newFixedThreadPool(16);
    try {
      List<Callable<Integer>> writers = new ArrayList<>();
      for (int i = 0; i < 200; i++) {
        String id = i % 4 == 0 ? "taken" : "new-" + i;
        Document document =
            i % 4 == 1
                ? Document.of(formula("Cake", line(null, "nowhere", "200 g")), id)
                : cream(id, "Cream " + i);
        writers.add(() -> numberOf(document));
      }
      int kept = 0;
      for (Future<Integer> writer : threads.invokeAll(writers)) {
        kept += writer.get();
      }
      assertThat(kept).isEqualTo(100);
      assertThat(store.revision()).isEqualTo(101); // no refused write took a revision
      assertThat(store.list(Kind.FORMULA, "", 1_000, null).rows()).hasSize(101);
      List<Long> revisions = new ArrayList<>();
      for (Listed.Row row : store.list(Kind.FORMULA, "", 1_000, null).rows()) {
        revisions.add(store.read(Kind.FORMULA, row.id()).revision());
      }
      assertThat(revisions).doesNotHaveDuplicates().allMatch(one -> one >= 1 && one <= 101);
    } finally {
      threads.shutdownNow();
    }
  }

  private int numberOf(Document document) {
    try {
      return store.create(document, "local").number();
    } catch (Refusal refusal) {
      assertThat(refusal.faults().get(0).code())
          .isEqualTo(document.id().equals("taken") ? FaultCode.EXISTS : FaultCode.UNKNOWN_FORMULA);
      return 0;
    }
  }

  @Test
  void an_ingredient_is_found_by_its_names_of_that_time() {
    store.create(Document.of(ingredient("pear-dried", "Dried  Pears")), "local");
    Shelf before = store.shelf();
    store.replace(Document.of(ingredient("pear-dried", "hutzel")), 1, "local");
    assertThat(before.ingredientsNamed("dried pears")).containsExactly("pear-dried");
    assertThat(before.ingredientsNamed("hutzel")).isEmpty();
    assertThat(store.shelf().ingredientsNamed("hutzel")).containsExactly("pear-dried");
    assertThat(store.shelf().ingredientsNamed("dried pears")).isEmpty();
  }

  @Test
  void prices_are_one_document_with_revisions() {
    assertThat(store.shelf().prices().prices()).isEmpty();
    store.create(Document.of(prices("11.95 EUR")), "local");
    Shelf before = store.shelf();
    store.replace(Document.of(prices("12.40 EUR")), 1, "local");
    assertThat(before.prices()).isEqualTo(prices("11.95 EUR"));
    assertThat(store.shelf().prices()).isEqualTo(prices("12.40 EUR"));
    assertThat(store.revision()).isEqualTo(2);
  }

  @Test
  void observations_come_to_a_trial_once_each() {
    store.create(cream("cream", "Cream"), "local");
    store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
    StoreShelf before = store.shelf();
    assertThat(store.observe("t1", observation("o2", "112 °C"), "local").isNew()).isTrue();
    assertThat(store.observe("t1", observation("o2", "112 °C"), "local").isNew()).isFalse();
    assertThat(store.observe("t1", observation("o1", "104 °C"), "local").isNew()).isFalse();
    refused(FaultCode.EXISTS, () -> store.observe("t1", observation("o2", "113 °C"), "local"));
    refused(FaultCode.EXISTS, () -> store.observe("t1", observation("o1", "113 °C"), "local"));
    refused(FaultCode.NOT_FOUND, () -> store.observe("t9", observation("o1", "1 °C"), "local"));
    assertThat(store.trials()).isEqualTo(2);
    assertThat(store.revision()).isEqualTo(1);
    assertThat(before.trial("t1").observations()).hasSize(1);
    assertThat(store.shelf().trial("t1").observations()).hasSize(2);
    assertThat(store.shelf().trialsOf("cream")).hasSize(1);
    assertThat(Trials.read(store, "t1").added()).isEqualTo(1);
  }

  @Test
  void a_replaced_trial_begins_with_its_own_observations() {
    store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
    store.observe("t1", observation("o2", "112 °C"), "local");
    store.replace(Document.of(trial("t1", observation("o3", "90 °C"))), 1, "local");
    assertThat(store.shelf().trial("t1").observations())
        .containsExactly(observation("o3", "90 °C"));
    assertThat(store.observe("t1", observation("o2", "110 °C"), "local").isNew()).isTrue();
  }

  @Test
  void sixteen_probes_lose_no_reading() throws Exception {
    store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
    ExecutorService threads = Executors.newFixedThreadPool(16);
    try {
      List<Callable<Observed>> probes = new ArrayList<>();
      for (int i = 0; i < 64; i++) {
        Observation one = observation("probe-" + i / 2, "110 °C");
        probes.add(() -> store.observe("t1", one, "probe"));
      }
      int isNew = 0;
      for (Future<Observed> probe : threads.invokeAll(probes)) {
        isNew += probe.get().isNew() ? 1 : 0;
      }
      assertThat(isNew).isEqualTo(32);
      assertThat(store.shelf().trial("t1").observations()).hasSize(33);
    } finally {
      threads.shutdownNow();
    }
  }

  protected static void refused(FaultCode code, Runnable call) {
    assertThatThrownBy(call::run)
        .isInstanceOfSatisfying(
            Refusal.class, refusal -> assertThat(refusal.faults().get(0).code()).isEqualTo(code));
  }
}
