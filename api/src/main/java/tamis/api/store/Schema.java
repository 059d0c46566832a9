package tamis.api.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.TreeSet;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import tamis.api.version.Versions;

/** The tables of a store, in the version that this program knows. */
final class Schema {
  /** No table of ours is there yet. */
  static final int NONE = 0;

  private static final String MIGRATIONS = "classpath:tamis/api/store/";

  /** Flyway's own; it is there first, and alone if the program ended just then. */
  private static final String HISTORY = "flyway_schema_history";

  private static final String[] TABLES = {"TABLE"};
  private static final String NOT_OURS =
      "the database holds tables that are not Tamis' own: name another one";

  private Schema() {}

  /**
   * The version of what is there.
   *
   * @throws SQLException if it cannot be read
   * @throws UnusableStore if it is not ours, or a newer program wrote it
   */
  static int version(Connection connection) throws SQLException {
    var names = new TreeSet<String>();
    try (var tables =
        connection.getMetaData().getTables(null, connection.getSchema(), "%", TABLES)) {
      while (tables.next()) {
        names.add(tables.getString("TABLE_NAME"));
      }
    }
    names.remove(HISTORY);
    if (names.isEmpty()) {
      return NONE;
    }
    if (!names.contains("store")) {
      throw new UnusableStore(NOT_OURS);
    }
    try (var statement = connection.createStatement();
        var row = statement.executeQuery("SELECT schema_version FROM store")) {
      int version = row.next() ? row.getInt(1) : NONE;
      refuseNewer(version);
      return version;
    }
  }

  private static void refuseNewer(int version) {
    int known = Versions.ofThisBuild().store();
    if (version > known) {
      throw new UnusableStore(
          "the store has schema "
              + version
              + ", this program knows up to "
              + known
              + ": use the newer Tamis that wrote it");
    }
  }

  /** Brings the tables up to date. That takes a while to load, so that it is asked for first. */
  static void bringUpToDate(Dialect dialect, int version, DataSource source) {
    if (version == Versions.ofThisBuild().store()) {
      return;
    }
    try {
      Flyway.configure(Schema.class.getClassLoader())
          .dataSource(source)
          .locations(MIGRATIONS + "tables", MIGRATIONS + dialect.folder())
          .placeholders(dialect.words())
          .load()
          .migrate();
    } catch (FlywayException failed) {
      throw new UnusableStore(
          "the tables cannot be made or brought up to date: may this user make tables here?",
          failed);
    }
  }
}
