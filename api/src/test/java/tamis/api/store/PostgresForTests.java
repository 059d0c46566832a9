package tamis.api.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicInteger;

/** A real server, started once a test run; each test gets a schema of its own. */
final class PostgresForTests {
  static final String USER = "postgres";

  private static final AtomicInteger SCHEMAS = new AtomicInteger();

  private PostgresForTests() {}

  private static final class Started {
    static final EmbeddedPostgres SERVER = start();

    private static EmbeddedPostgres start() {
      try {
        // The library's own settings are for speed; a store is tested with what makes it durable.
        return EmbeddedPostgres.builder()
            .setServerConfig("fsync", "on")
            .setServerConfig("full_page_writes", "on")
            .setServerConfig("synchronous_commit", "on")
            .start();
      } catch (IOException failed) {
        throw new UncheckedIOException(failed);
      }
    }
  }

  static int port() {
    return Started.SERVER.getPort();
  }

  /** The address of an empty schema. */
  static String emptySchema() {
    String schema = "shop_" + SCHEMAS.incrementAndGet();
    execute("CREATE SCHEMA " + schema);
    return url() + "?currentSchema=" + schema;
  }

  static String url() {
    return "jdbc:postgresql://127.0.0.1:" + port() + "/postgres";
  }

  static void execute(String sql) {
    try (var connection = DriverManager.getConnection(url(), USER, "");
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }
}
