package tamis.api.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Objects;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** A store in a PostgreSQL database, which several programs may share. */
final class PostgresServer {
  static final String URL_BEGIN = "jdbc:postgresql:";

  private static final int READERS = 8;
  private static final int WRITERS = 4;
  private static final int MILLIS_TO_WAIT = 3_000;

  private PostgresServer() {}

  /**
   * @throws UnusableStore if it cannot be reached or used; the message holds no secret
   */
  static Database open(String url, @Nullable String user, @Nullable String password) {
    if (!url.startsWith(URL_BEGIN)) {
      throw new UnusableStore("TAMIS_DB must begin with " + URL_BEGIN + "//");
    }
    var properties = properties(user, password);
    int version = check(url, properties);
    var writers = pool(url, properties, WRITERS);
    Schema.bringUpToDate(Dialect.POSTGRESQL, version, writers);
    return new Database(Dialect.POSTGRESQL, pool(url, properties, READERS), writers);
  }

  private static int check(String url, Properties properties) {
    try (Connection connection = DriverManager.getConnection(url, properties)) {
      return Schema.version(connection);
    } catch (SQLException failed) {
      throw new UnusableStore(reason(url, failed), failed);
    }
  }

  private static String reason(String url, SQLException failed) {
    String place = place(url);
    String state = Objects.requireNonNullElse(failed.getSQLState(), "");
    if (state.startsWith("28")) {
      return "the database at "
          + place
          + " does not take this user and password (TAMIS_DB_USER, TAMIS_DB_PASSWORD)";
    }
    if (state.equals("3D000")) {
      return "there is no such database at " + place;
    }
    return state.startsWith("08")
        ? "the database at " + place + " cannot be reached"
        : "the database at " + place + " cannot be used (SQL state " + state + ")";
  }

  /** Host, port and name; what follows them may hold a password. */
  private static String place(String url) {
    String rest = url.substring(URL_BEGIN.length()).replaceFirst("^//", "");
    return rest.replaceFirst("[?;].*$", "").replaceFirst("^[^/]*@", "");
  }

  private static Properties properties(@Nullable String user, @Nullable String password) {
    var properties = new Properties();
    if (user != null) {
      properties.setProperty("user", user);
    }
    if (password != null) {
      properties.setProperty("password", password);
    }
    properties.setProperty("ApplicationName", "tamis");
    properties.setProperty("connectTimeout", "3");
    properties.setProperty("loginTimeout", "4");
    properties.setProperty("socketTimeout", "30");
    // An answered write is on the server's disk, whatever the server's own default is.
    properties.setProperty("options", "-c synchronous_commit=on -c lock_timeout=3s");
    return properties;
  }

  private static HikariDataSource pool(String url, Properties properties, int size) {
    var config = new HikariConfig();
    config.setJdbcUrl(url);
    config.setDataSourceProperties(properties);
    config.setMaximumPoolSize(size);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(MILLIS_TO_WAIT);
    return new HikariDataSource(config);
  }
}
