package tamis.api.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.Pragma;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/** A store in one SQLite file. */
final class SqliteFile {
  private static final int READERS = 8;
  private static final int MILLIS_TO_WAIT = 3_000;

  /** 16 MB: pages that are written again and again then go to the file itself less often. */
  private static final String PAGES_AHEAD = "4000";

  /** A connection's own; with the usual 2 MB a read of 100,000 formulas fetched all its pages. */
  private static final int KILOBYTES_OF_PAGES = 16_000;

  /** A larger file is not looked through at each start: that would take longer than the start. */
  private static final long LARGEST_LOOKED_THROUGH = 16L << 20;

  private SqliteFile() {}

  /**
   * @throws UnusableStore if it is no store, or one that this program cannot use; it is then left
   *     as it is
   */
  static Database open(Path file) {
    int version = Files.exists(file) ? check(file) : Schema.NONE;
    var source = new DurableSource(config(TransactionMode.IMMEDIATE), file);
    try {
      Schema.bringUpToDate(Dialect.SQLITE, version, source);
      return new Database(
          Dialect.SQLITE,
          pool(source, READERS),
          pool(source, 1)); // SQLite has one writer at a time
    } catch (RuntimeException failed) {
      throw failed instanceof UnusableStore told ? told : unusable(file, failed);
    }
  }

  /** The version of its schema; reads only, so that a file that is not ours stays as it is. */
  static int check(Path file) {
    var config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(MILLIS_TO_WAIT);
    try (Connection connection = config.createConnection("jdbc:sqlite:" + file)) {
      int version = Schema.version(connection);
      if (Files.size(file) <= LARGEST_LOOKED_THROUGH) {
        refuseDamaged(connection, file);
      }
      return version;
    } catch (SQLException | IOException failed) {
      throw unusable(file, failed);
    }
  }

  private static void refuseDamaged(Connection connection, Path file) throws SQLException {
    try (var statement = connection.createStatement();
        var row = statement.executeQuery("PRAGMA quick_check(1)")) {
      if (!row.next() || !"ok".equals(row.getString(1))) {
        throw new UnusableStore(file + " is damaged: restore a backup");
      }
    }
  }

  private static UnusableStore unusable(Path file, Exception failed) {
    return new UnusableStore(
        file + " cannot be used as a store: it is damaged, no SQLite file, or not readable",
        failed);
  }

  /** A write takes its lock at its start, not midway, where it could only fail. */
  private static SQLiteConfig config(TransactionMode mode) {
    var config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.setBusyTimeout(MILLIS_TO_WAIT);
    config.setTransactionMode(mode);
    config.setPragma(Pragma.WAL_AUTOCHECKPOINT, PAGES_AHEAD);
    config.setCacheSize(-KILOBYTES_OF_PAGES); // negative: of memory, not of pages
    config.setGetGeneratedKeys(false); // else the driver asks for one after each insert
    return config;
  }

  private static HikariDataSource pool(DurableSource source, int size) {
    var config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(size);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(MILLIS_TO_WAIT);
    config.setMaxLifetime(0); // a file does not go stale
    return new HikariDataSource(config);
  }

  /** Hands out connections whose commits are on the disk, and no others. */
  private static final class DurableSource extends SQLiteDataSource {
    DurableSource(SQLiteConfig config, Path file) {
      super(config);
      setUrl("jdbc:sqlite:" + file);
    }

    @Override
    public org.sqlite.SQLiteConnection getConnection(String user, String password)
        throws SQLException {
      var connection = super.getConnection(user, password);
      try (var statement = connection.createStatement()) {
        refuseUnless(statement, "PRAGMA journal_mode", "wal");
        refuseUnless(statement, "PRAGMA synchronous", "2"); // FULL
      } catch (SQLException failed) {
        connection.close();
        throw failed;
      }
      return connection;
    }

    private static void refuseUnless(java.sql.Statement statement, String pragma, String wanted)
        throws SQLException {
      try (var row = statement.executeQuery(pragma)) {
        String given = row.next() ? row.getString(1) : "nothing";
        if (!wanted.equalsIgnoreCase(given)) {
          throw new SQLException(pragma + " is " + given + ", must be " + wanted);
        }
      }
    }
  }
}
