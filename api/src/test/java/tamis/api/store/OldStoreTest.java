package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.api.store.StoreContract.cream;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What an earlier version of the program kept is read by this one, and written on. */
class OldStoreTest {
  private static final String WRITTEN = "2026-04-11T08:00:00Z";

  @TempDir Path directory;

  @ParameterizedTest(name = "schema {0}")
  @ValueSource(ints = {1, 2, 3})
  void an_older_file_is_brought_up_to_date(int version) throws SQLException {
    Path file = directory.resolve("tamis.db");
    made("jdbc:sqlite:" + file, "", Dialect.SQLITE, version);
    try (var store = SqlStore.sqlite(file, Clock.systemUTC())) {
      goesOn(store);
    }
    try (var store = SqlStore.sqlite(file, Clock.systemUTC())) {
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(2);
    }
  }

  @ParameterizedTest(name = "schema {0}")
  @ValueSource(ints = {1, 2, 3})
  void an_older_database_is_brought_up_to_date(int version) throws SQLException {
    String url = PostgresForTests.emptySchema();
    made(url, PostgresForTests.USER, Dialect.POSTGRESQL, version);
    try (var store = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC())) {
      goesOn(store);
    }
  }

  @Test
  void a_store_without_documents_was_never_written() {
    try (var store = SqlStore.sqlite(directory.resolve("tamis.db"), Clock.systemUTC())) {
      assertThat(store.shelf().written()).isNull();
    }
  }

  private static void goesOn(SqlStore store) {
    assertThat(store.revision()).isEqualTo(4);
    assertThat(store.trials()).isEqualTo(1);
    assertThat(store.shelf().written()).isEqualTo(Instant.parse(WRITTEN));
    assertThat(store.shelf().formula("cream", null).title()).isEqualTo("Cream");
    assertThat(store.list(Kind.FORMULA, "cream", 10, null).rows()).hasSize(2);
    assertThat(store.list(Kind.FORMULA, "", 10, null).rows())
        .extracting(Listed.Row::number)
        .containsExactly(1, 1);
    assertThat(store.read(Kind.FORMULA, "gone")).isNull();
    assertThat(store.create(cream("gone", "Again"), "local").number()).isEqualTo(3);
    assertThat(store.replace(cream("cream", "Second"), 1, "local").revision()).isEqualTo(6);
    assertThat(store.list(Kind.FORMULA, "second", 10, null).rows()).hasSize(1);
  }

  private static void made(String url, String user, Dialect dialect, int version)
      throws SQLException {
    Flyway.configure(OldStoreTest.class.getClassLoader())
        .dataSource(url, user, "")
        .locations(
            "classpath:tamis/api/store/tables", "classpath:tamis/api/store/" + dialect.folder())
        .placeholders(dialect.words())
        .target(version + ".9?") // the highest up to that
        .load()
        .migrate();
    try (var connection = DriverManager.getConnection(url, user, "");
        var statement = connection.createStatement()) {
      row(statement, "formula", "cream", 4, WRITTEN, cream("cream", "Cream").json());
      row(statement, "formula", "older", 1, "2026-04-10T08:00:00.5Z", cream("o", "Cream").json());
      row(statement, "trial", "t1", 1, "2026-04-12T08:00:00Z", "{}");
      row(statement, "formula", "gone", 2, "2026-04-10T09:00:00Z", cream("g", "Gone").json());
      statement.execute(
          "INSERT INTO document VALUES ('formula', 'gone', 2, 3, '2026-04-10T10:00:00Z', 'a', NULL)");
      statement.execute("UPDATE head SET number = 2, live = 0 WHERE id = 'gone'");
      statement.execute("UPDATE store SET revision = 4, trials = 1");
      if (version >= 2) {
        statement.execute(
            "INSERT INTO unfiled VALUES ('formula', 'older', ' cream older', ' old')");
      }
      if (version >= 3) {
        statement.execute("UPDATE store SET written = '" + WRITTEN + "'");
      }
    }
  }

  private static void row(
      java.sql.Statement statement, String kind, String id, int revision, String at, String body)
      throws SQLException {
    String key = "('" + kind + "', '" + id + "', 1, ";
    statement.execute(
        "INSERT INTO document VALUES " + key + revision + ", '" + at + "', 'a', '" + body + "')");
    statement.execute(
        "INSERT INTO head VALUES " + key + "1, 'Cream', ' cream egg white " + id + "')");
    statement.execute("INSERT INTO finding VALUES ('" + kind + "', 'w:cream', '" + id + "')");
  }
}
