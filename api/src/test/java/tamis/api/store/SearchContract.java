package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What every store must keep to: its lists by page, and searches by word. */
abstract class SearchContract extends StoreSamples {
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
  void a_title_with_the_old_words_is_listed() {
    store.create(cream("cream", "Coffee cream"), "local");
    store.replace(cream("cream", "Coffee, cream!"), 1, "local");
    store.replace(cream("cream", "Coffee, cream!"), 2, "local");
    assertThat(store.list(Kind.FORMULA, "coffee", 10, null).rows())
        .containsExactly(new Listed.Row("cream", "Coffee, cream!", 3));
  }

  @Test
  void common_words_find_page_by_page() {
    for (int i = 1000; i < 2100; i++) {
      store.create(cream("cream-" + i, i % 100 == 0 ? "Rare cream" : "Cream"), "local");
    }
    Listed page = store.list(Kind.FORMULA, "cream", 30, "cream-1049");
    assertThat(page.rows()).hasSize(30);
    assertThat(page.rows().get(0).id()).isEqualTo("cream-1050");
    assertThat(page.next()).isEqualTo("cream-1079");
    assertThat(store.list(Kind.FORMULA, "cr rare", 30, null).rows()).hasSize(11);
    assertThat(store.list(Kind.FORMULA, "eg whit cre", 5, null).rows()).hasSize(5);
    assertThat(store.list(Kind.FORMULA, "absent cream", 5, null).rows()).isEmpty();
  }

  @Test
  void a_search_finds_the_newest_words_only() {
    store.create(cream("cream", "Coffee"), "local");
    store.replace(cream("cream", "Lemon"), 1, "local");
    assertThat(store.list(Kind.FORMULA, "coffee", 10, null).rows()).isEmpty();
    assertThat(store.list(Kind.FORMULA, "lemon", 10, null).rows()).hasSize(1);
    store.delete(Kind.FORMULA, "cream", 2, "local");
    assertThat(store.list(Kind.FORMULA, "lemon", 10, null).rows()).isEmpty();
  }

  /** Files the words that wait for it, where they do. */
  protected void fileWords() {
    if (store instanceof SqlStore sql) {
      sql.fileWords();
    }
  }

  @Test
  void words_are_found_before_and_after_they_are_filed() {
    store.create(cream("cream", "Coffee"), "local");
    store.replace(cream("cream", "Lemon"), 1, "local");
    fileWords();
    foundBy("lemon", "cream");
    store.replace(cream("cream", "Coffee again"), 2, "local");
    store.create(cream("cake", "Lemon cake"), "local");
    foundBy("lemon", "cake");
    foundBy("cof aga", "cream");
    store.replace(cream("cream", "Lemon at last"), 3, "local");
    foundBy("lemon", "cake", "cream");
    fileWords();
    foundBy("lemon", "cake", "cream");
    foundBy("coffee");
    store.delete(Kind.FORMULA, "cream", 4, "local");
    foundBy("lemon", "cake");
    store.create(cream("cream", "Plain"), "local");
    fileWords();
    foundBy("lemon", "cake");
    foundBy("pl", "cream");
  }

  private void foundBy(String words, String... ids) {
    assertThat(store.list(Kind.FORMULA, words, 10, null).rows())
        .extracting(Listed.Row::id)
        .containsExactly(ids);
  }
}
