package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.api.store.StoreContract.cream;
import static tamis.api.store.StoreContract.refused;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Full, locked, read-only, lost: writes are refused whole, reads go on, and it passes. */
class StoreTroubleTest {
  @TempDir Path directory;

  @Test
  void a_full_disk_refuses_writes_until_there_is_room() throws SQLException {
    try (var store = sqlite()) {
      store.create(cream("cream", "Cream"), "local");
      onWriter(store, "PRAGMA max_page_count = 40");
      int kept = 1;
      Refusal full = null;
      while (full == null && kept < 1_000) {
        try {
          store.create(cream("cream-" + kept, "Cream " + "x".repeat(2_000)), "local");
          kept++;
        } catch (Refusal refusal) {
          full = refusal;
        }
      }
      assertThat(full.faults().get(0).code()).isEqualTo(FaultCode.STORE_FULL);
      assertThat(store.revision()).isEqualTo(kept);
      assertThat(store.read(Kind.FORMULA, "cream-" + kept)).isNull();
      assertThat(store.revisions(Kind.FORMULA, "cream-" + kept)).isEmpty();
      assertThat(store.shelf().formula("cream", null)).isNotNull();
      assertThat(store.list(Kind.FORMULA, "cream", 1_000, null).rows()).hasSize(kept);
      onWriter(store, "PRAGMA max_page_count = 1000000");
      store.create(cream("cream-" + kept, "Cream " + "x".repeat(2_000)), "local");
      assertThat(store.revision()).isEqualTo(kept + 1L);
      assertThat(integrity(store)).isEqualTo("ok");
    }
  }

  @Test
  void a_locked_file_refuses_writes_until_it_is_free() throws SQLException {
    try (var store = sqlite();
        var other = DriverManager.getConnection("jdbc:sqlite:" + file());
        var statement = other.createStatement()) {
      store.create(cream("cream", "Cream"), "local");
      statement.execute("BEGIN IMMEDIATE");
      refused(FaultCode.STORE_UNAVAILABLE, () -> store.replace(cream("cream", "b"), 1, "local"));
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(1);
      statement.execute("ROLLBACK");
      assertThat(store.replace(cream("cream", "b"), 1, "local").number()).isEqualTo(2);
    }
  }

  @Test
  void a_read_only_file_refuses_writes() throws SQLException {
    try (var store = sqlite()) {
      store.create(cream("cream", "Cream"), "local");
      onWriter(store, "PRAGMA query_only = 1");
      refused(FaultCode.STORE_UNAVAILABLE, () -> store.replace(cream("cream", "b"), 1, "local"));
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(1);
      onWriter(store, "PRAGMA query_only = 0");
      assertThat(store.replace(cream("cream", "b"), 1, "local").number()).isEqualTo(2);
    }
  }

  @Test
  void lost_connections_come_back() {
    try (var store = postgresql()) {
      store.create(cream("cream", "Cream"), "local");
      PostgresForTests.execute(
          "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'tamis'");
      Stored written = null;
      for (int i = 0; written == null && i < 50; i++) {
        try {
          written = store.replace(cream("cream", "b"), 1, "local");
        } catch (Refusal lost) {
          assertThat(lost.faults().get(0).code()).isEqualTo(FaultCode.STORE_UNAVAILABLE);
        }
      }
      assertThat(written.number()).isEqualTo(2);
      assertThat(store.revisions(Kind.FORMULA, "cream")).hasSize(2);
    }
  }

  @Test
  void locked_rows_of_a_server_refuse_writes_until_they_are_free() throws SQLException {
    String url = PostgresForTests.emptySchema();
    try (var store = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
        Connection other = DriverManager.getConnection(url, PostgresForTests.USER, "");
        var statement = other.createStatement()) {
      store.create(cream("cream", "Cream"), "local");
      other.setAutoCommit(false);
      statement.execute("SELECT * FROM store FOR UPDATE");
      refused(FaultCode.STORE_UNAVAILABLE, () -> store.replace(cream("cream", "b"), 1, "local"));
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(1);
      assertThat(store.shelf().formula("cream", null)).isNotNull();
      other.rollback();
      assertThat(store.replace(cream("cream", "b"), 1, "local").number()).isEqualTo(2);
    }
  }

  @Test
  void a_read_only_server_refuses_writes() throws SQLException {
    try (var store = postgresql()) {
      store.create(cream("cream", "Cream"), "local");
      try (var connection = store.database().pools().get(1).getConnection();
          var statement = connection.createStatement()) {
        statement.execute("SET default_transaction_read_only = on");
      }
      refused(FaultCode.STORE_UNAVAILABLE, () -> store.replace(cream("cream", "b"), 1, "local"));
      assertThat(store.read(Kind.FORMULA, "cream").number()).isEqualTo(1);
    }
  }

  private SqlStore sqlite() {
    return SqlStore.sqlite(file(), Clock.systemUTC());
  }

  private static SqlStore postgresql() {
    return SqlStore.postgresql(
        PostgresForTests.emptySchema(), PostgresForTests.USER, null, Clock.systemUTC());
  }

  private Path file() {
    return directory.resolve("tamis.db");
  }

  private static String integrity(SqlStore store) throws SQLException {
    return onWriter(store, "PRAGMA integrity_check");
  }

  static String onWriter(SqlStore store, String sql) throws SQLException {
    try (var connection = store.database().pools().get(1).getConnection();
        var statement = connection.createStatement()) {
      return statement.execute(sql) ? statement.getResultSet().getString(1) : "";
    }
  }
}
