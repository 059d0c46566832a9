package tamis.api.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicInteger;

/** A real server, started once a test run; each test gets a schema of its own. */
final class PostgresForTests {
  static final String USER = "postgres";

  /** A user who must give a password. */
  static final String LOCKED_USER = "guarded";

  private static final AtomicInteger SCHEMAS = new AtomicInteger();

  private PostgresForTests() {}

  private static final class Started {
    static final EmbeddedPostgres SERVER = start();

    private static EmbeddedPostgres start() {
      try {
        // The library's own settings are for speed; a store is tested with what makes it durable.
        Path data = Files.createTempDirectory("tamis-postgres");
        EmbeddedPostgres server =
            EmbeddedPostgres.builder()
                .setDataDirectory(data)
                .setServerConfig("fsync", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("synchronous_commit", "on")
                .start();
        Path access = data.resolve("pg_hba.conf");
        String guarded = "host all " + LOCKED_USER + " 127.0.0.1/32 scram-sha-256\n";
        Files.writeString(access, guarded + Files.readString(access));
        execute(server.getPort(), "CREATE ROLE " + LOCKED_USER + " LOGIN PASSWORD 'right'");
        execute(server.getPort(), "SELECT pg_reload_conf()");
        return server;
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
    return url(port());
  }

  private static String url(int port) {
    return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
  }

  static void execute(String sql) {
    execute(port(), sql);
  }

  private static void execute(int port, String sql) {
    try (var connection = DriverManager.getConnection(url(port), USER, "");
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }
}
