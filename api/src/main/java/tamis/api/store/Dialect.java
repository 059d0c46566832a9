package tamis.api.store;

import java.sql.SQLException;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import tamis.engine.fault.FaultCode;

/** Where SQLite and PostgreSQL differ; all other SQL is the same for both. */
enum Dialect {
  SQLITE("sqlite", "", "WITHOUT ROWID") {
    @Override
    Writing writing() {
      return new SqliteWriting();
    }

    @Override
    String rows(String joined, String name) {
      return "json_each('[\"' || replace(" + joined + ", ' ', '\",\"') || '\"]') " + name;
    }

    @Override
    @Nullable FaultCode meaning(SQLException thrown) {
      if (!(thrown instanceof SQLiteException lite)) {
        return null;
      }
      int primary = lite.getResultCode().code & 0xFF; // extended codes say more in higher bits
      if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
        return FaultCode.STORE_FULL;
      }
      boolean passes =
          primary == SQLiteErrorCode.SQLITE_BUSY.code
              || primary == SQLiteErrorCode.SQLITE_LOCKED.code
              || primary == SQLiteErrorCode.SQLITE_IOERR.code
              || primary == SQLiteErrorCode.SQLITE_READONLY.code
              || primary == SQLiteErrorCode.SQLITE_CANTOPEN.code
              || primary == SQLiteErrorCode.SQLITE_CORRUPT.code
              || primary == SQLiteErrorCode.SQLITE_NOTADB.code;
      return passes ? FaultCode.STORE_UNAVAILABLE : null;
    }
  },

  /** Texts are compared by bytes, as SQLite does, whatever the language of the server. */
  POSTGRESQL("postgresql", "COLLATE \"C\"", "") {
    @Override
    Writing writing() {
      return new PostgresWriting();
    }

    @Override
    String rows(String joined, String name) {
      return "unnest(string_to_array(" + joined + ", ' ')) " + name + "(value)";
    }

    @Override
    @Nullable FaultCode meaning(SQLException thrown) {
      String state = Objects.requireNonNullElse(thrown.getSQLState(), "");
      if (state.equals("53100")) { // disk_full
        return FaultCode.STORE_FULL;
      }
      // Connection lost, resources short, operator's intervention, locks, read-only, file errors.
      return state.matches("(08|53|57|58|40|XX)...|55P03|25006|25P0.|28...")
          ? FaultCode.STORE_UNAVAILABLE
          : null;
    }
  };

  private final String folder;
  private final String exact;
  private final String clustered;

  Dialect(String folder, String exact, String clustered) {
    this.folder = folder;
    this.exact = exact;
    this.clustered = clustered;
  }

  /** Where migrations lie that the other has not. */
  String folder() {
    return folder;
  }

  /** Keeps documents there. */
  abstract Writing writing();

  /** Words between which there is a space as rows of one column, {@code value}. */
  abstract String rows(String joined, String name);

  /** What stands for the placeholders of the migrations. */
  Map<String, String> words() {
    return Map.of("exact", exact, "clustered", clustered);
  }

  /** The fault that passes by itself or by an operator's hand; null if the program is wrong. */
  abstract @Nullable FaultCode meaning(SQLException thrown);
}
