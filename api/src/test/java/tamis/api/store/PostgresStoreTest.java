package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;

class PostgresStoreTest extends StoreContract {
  private String url;

  @Override
  protected Store open() {
    url = PostgresForTests.emptySchema();
    return openAgain();
  }

  private SqlStore openAgain() {
    return SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
  }

  @Test
  void every_connection_waits_for_the_disk() {
    for (var pool : ((SqlStore) store).database().pools()) {
      try (var connection = pool.getConnection();
          var statement = connection.createStatement();
          var row = statement.executeQuery("SHOW synchronous_commit")) {
        row.next();
        assertThat(row.getString(1)).isEqualTo("on");
      } catch (java.sql.SQLException failed) {
        throw new AssertionError(failed);
      }
    }
  }

  @Test
  void another_program_sees_a_write_within_a_quarter_of_a_second() throws Exception {
    try (var other = openAgain()) {
      for (int i = 1; i <= 5; i++) {
        store.create(cream("cream-" + i, "Cream"), "local");
        assertThat(other.read(Kind.FORMULA, "cream-" + i)).isNotNull();
        Thread.sleep(250);
        assertThat(other.revision()).isEqualTo(i);
        assertThat(other.shelf().formula("cream-" + i, null)).isNotNull();
      }
    }
  }

  @Test
  void what_was_looked_up_holds_until_anybody_writes_such_a_document() {
    try (var other = openAgain()) {
      StoreShelf before = store.shelf();
      assertThat(before.ingredient("pear-dried")).isNull();
      store.create(cream("cream", "Cream"), "local");
      assertThat(store.shelf().ingredient("pear-dried")).isNull();
      other.create(Document.of(ingredient("pear-dried", "Hutzel")), "local");
      store.replace(cream("cream", "Second"), 1, "local"); // the second after what is known here
      assertThat(store.shelf().ingredient("pear-dried")).isNotNull();
      assertThat(store.shelf().ingredientsNamed("hutzel")).containsExactly("pear-dried");
      assertThat(before.ingredient("pear-dried")).isNull();
    }
  }

  @Test
  void others_write_while_words_are_filed() {
    var sql = (SqlStore) store;
    store.create(cream("cream", "Coffee"), "local");
    sql.database()
        .useWriter(
            handle -> {
              new Filing(sql.database()).all(handle);
              store.replace(cream("cream", "Lemon"), 1, "local");
              store.create(cream("cake", "Lemon cake"), "local");
            });
    for (int i = 0; i < 2; i++) {
      assertThat(store.list(Kind.FORMULA, "lemon", 10, null).rows()).hasSize(2);
      assertThat(store.list(Kind.FORMULA, "coffee", 10, null).rows()).isEmpty();
      sql.fileWords();
    }
    assertThat(terms(sql, "cream")).contains("w:lemon").doesNotContain("w:coffee");
  }

  private static List<String> terms(SqlStore store, String id) {
    String sql = "SELECT term FROM finding WHERE kind = 'formula' AND id = ?";
    return store
        .database()
        .read(handle -> handle.createQuery(sql).bind(0, id).mapTo(String.class).list());
  }

  @Test
  void two_programs_lose_no_update() throws Exception {
    store.create(cream("cream", "0"), "local");
    try (var other = openAgain()) {
      int written = race(() -> store, () -> other);
      assertThat(store.revisions(Kind.FORMULA, "cream")).hasSize(written + 1);
      assertThat(other.read(Kind.FORMULA, "cream").number()).isEqualTo(written + 1);
    }
  }
}
