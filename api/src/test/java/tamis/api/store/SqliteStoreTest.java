package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SqliteStoreTest extends StoreContract {
  @TempDir Path directory;

  @Override
  protected Store open() {
    return SqlStore.sqlite(directory.resolve("tamis.db"), Clock.systemUTC());
  }

  @Test
  void every_connection_writes_ahead_and_waits_for_the_disk() throws SQLException {
    for (var pool : ((SqlStore) store).database().pools()) {
      List<Connection> all = new ArrayList<>();
      for (int i = 0; i < pool.getMaximumPoolSize(); i++) {
        all.add(pool.getConnection());
      }
      for (Connection one : all) {
        assertThat(value(one, "PRAGMA journal_mode")).isEqualTo("wal");
        assertThat(value(one, "PRAGMA synchronous")).isEqualTo("2");
        assertThat(value(one, "PRAGMA cache_size")).isEqualTo("-16000");
        assertThat(value(one, "PRAGMA wal_autocheckpoint")).isEqualTo("4000");
        one.close();
      }
    }
  }

  @Test
  void what_was_written_is_there_when_it_is_opened_again() {
    store.create(cream("cream", "Coffee cream"), "local");
    store.replace(cream("cream", "Second"), 1, "local");
    store.close();
    store = open();
    assertThat(store.revision()).isEqualTo(2);
    assertThat(store.read(Kind.FORMULA, "cream").document().title()).isEqualTo("Second");
    assertThat(store.list(Kind.FORMULA, "second", 10, null).rows()).hasSize(1);
  }

  private static String value(Connection connection, String sql) throws SQLException {
    try (var statement = connection.createStatement();
        var row = statement.executeQuery(sql)) {
      return row.next() ? row.getString(1) : "nothing";
    }
  }
}
