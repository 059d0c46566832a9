package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tamis.api.store.StoreContract.cream;
import static tamis.api.store.StoreContract.observation;
import static tamis.api.store.StoreContract.refused;
import static tamis.api.store.StoreContract.trial;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.PrintWriter;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.logging.Logger;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConnection;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** What a write began and cannot undo is not committed by the next on the same connection. */
class UndoneWritesTest {
  @TempDir Path directory;

  @Test
  void a_connection_whose_rollback_fails_is_thrown_out() throws SQLException {
    String url = "jdbc:sqlite:" + directory.resolve("tamis.db");
    var writers = new Stubborn(url);
    try (var store = store();
        var database = new Database(Dialect.SQLITE, pool(new Stubborn(url)), pool(writers))) {
      writers.refuses.set(true);
      assertThatThrownBy(
              () ->
                  database.useWriter(
                      handle -> {
                        handle.execute("UPDATE store SET revision = 99");
                        throw new IllegalStateException("as in a test");
                      }))
          .hasMessage("as in a test");
      writers.refuses.set(false);
      assertThat(writers.given.get(0).isClosed()).isTrue();
      database.useWriter(handle -> handle.execute("UPDATE store SET trials = 7"));
      assertThat(database.read(Counters.At::read)).isEqualTo(new Counters.At(0, 7, null));
      assertThat(store.create(cream("cream", "Cream"), "local").revision()).isEqualTo(1);
    }
  }

  @Test
  void a_group_that_cannot_be_undone_ends_with_its_connection() {
    try (var store = store()) {
      store.create(cream("cream", "Cream"), "local");
      assertThatThrownBy(
              () ->
                  store
                      .database()
                      .writer(
                          connection ->
                              new SqliteWriting()
                                  .keep(connection, cutAfterFirst(connection), Instant.EPOCH)))
          .isInstanceOf(RuntimeException.class);
      assertThat(store.read(Kind.FORMULA, "first")).isNull();
      assertThat(store.replace(cream("cream", "Second"), 1, "local").revision()).isEqualTo(2);
      assertThat(store.list(Kind.FORMULA, "", 10, null).rows()).hasSize(1);
    }
  }

  /** Two writes, between which the connection ends. */
  private static List<Write> cutAfterFirst(Connection connection) {
    return new AbstractList<>() {
      @Override
      public Write get(int index) {
        if (index == 1) {
          try {
            connection.unwrap(SQLiteConnection.class).close();
          } catch (SQLException failed) {
            throw new IllegalStateException(failed);
          }
        }
        String id = index == 0 ? "first" : "second";
        return Write.of(cream(id, "Cream"), null, 0, Write.ANY, "local");
      }

      @Override
      public int size() {
        return 2;
      }
    };
  }

  @Test
  void a_full_disk_refuses_readings_and_deletions_too() throws SQLException {
    try (var store = store()) {
      store.create(cream("cream", "Cream"), "local");
      store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
      int kept = 0;
      for (int i = 0; i < 200 && kept == i; i++) {
        StoreTroubleTest.onWriter(store, "PRAGMA max_page_count = 20");
        String id = "long-".repeat(12) + i;
        try {
          store.observe("t1", observation(id, "110 °C"), "local");
          kept++;
        } catch (Refusal full) {
          assertThat(full.faults().get(0).code()).isEqualTo(FaultCode.STORE_FULL);
        }
      }
      assertThat(kept).isLessThan(200);
      assertThat(store.trials()).isEqualTo(kept + 1L);
      assertThat(store.shelf().trial("t1").observations()).hasSize(kept + 1);
      StoreTroubleTest.onWriter(store, "PRAGMA max_page_count = 1000000");
      store.observe("t1", observation("later", "110 °C"), "local");
      store.delete(Kind.FORMULA, "cream", 1, "local");
      assertThat(store.read(Kind.FORMULA, "cream")).isNull();
      refused(FaultCode.NOT_FOUND, () -> store.delete(Kind.FORMULA, "cream", 2, "local"));
    }
  }

  private SqlStore store() {
    return SqlStore.sqlite(directory.resolve("tamis.db"), Clock.systemUTC());
  }

  private static HikariDataSource pool(DataSource source) {
    var config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(1);
    return new HikariDataSource(config);
  }

  /** Gives connections that can be told to refuse a rollback. */
  private static final class Stubborn implements DataSource {
    final AtomicBoolean refuses = new AtomicBoolean();
    final List<Connection> given = new ArrayList<>();
    private final String url;

    Stubborn(String url) {
      this.url = url;
    }

    @Override
    public Connection getConnection() throws SQLException {
      Connection real = DriverManager.getConnection(url);
      given.add(real);
      return (Connection)
          Proxy.newProxyInstance(
              Stubborn.class.getClassLoader(),
              new Class<?>[] {Connection.class},
              (proxy, method, arguments) -> {
                if (method.getName().equals("rollback") && refuses.get()) {
                  throw new SQLException("as in a test");
                }
                try {
                  return method.invoke(real, arguments);
                } catch (InvocationTargetException failed) {
                  throw failed.getCause();
                }
              });
    }

    @Override
    public Connection getConnection(String user, String password) throws SQLException {
      return getConnection();
    }

    @Override
    public PrintWriter getLogWriter() {
      return new PrintWriter(System.err, true);
    }

    @Override
    public void setLogWriter(PrintWriter out) {
      throw new UnsupportedOperationException();
    }

    @Override
    public void setLoginTimeout(int seconds) {
      throw new UnsupportedOperationException();
    }

    @Override
    public int getLoginTimeout() {
      return 0;
    }

    @Override
    public Logger getParentLogger() {
      return Logger.getGlobal();
    }

    @Override
    public <T> T unwrap(Class<T> type) {
      throw new UnsupportedOperationException();
    }

    @Override
    public boolean isWrapperFor(Class<?> type) {
      return false;
    }
  }
}
