package tamis.api.store;

import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import tamis.api.version.Versions;

/** The tables of a store, in the version that this program knows. */
final class Schema {
  /** No table of ours is there yet. */
  static final int NONE = 0;

  private static final String MIGRATIONS = "classpath:tamis/api/store";

  private Schema() {}

  /**
   * The version of what is there.
   *
   * @throws SQLException if it cannot be read
   */
  static int version(Connection connection) throws SQLException {
    try (var tables =
        connection.getMetaData().getTables(null, connection.getSchema(), "store", null)) {
      if (!tables.next()) {
        return NONE;
      }
    }
    try (var statement = connection.createStatement();
        var row = statement.executeQuery("SELECT schema_version FROM store")) {
      return row.next() ? row.getInt(1) : NONE;
    }
  }

  /**
   * @throws UnusableStore if a newer program wrote it
   */
  static void refuseNewer(int version) {
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
          .locations(MIGRATIONS)
          .placeholders(dialect.words())
          .load()
          .migrate();
    } catch (FlywayException failed) {
      throw new UnusableStore(
          "the tables cannot be made or brought up to date: the database is not Tamis' own,"
              + " or its user may not make tables",
          failed);
    }
  }
}
