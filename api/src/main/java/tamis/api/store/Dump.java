package tamis.api.store;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.transaction.TransactionIsolationLevel;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.ResultJson;
import tamis.api.version.Versions;

/**
 * A whole store as NDJSON: a first line that counts, then every revision of every document and
 * every observation, in the order of their keys. Documents stand last in their lines and are the
 * very bytes that are kept, so that a store that is filled from a dump dumps the same.
 */
public final class Dump {
  static final String STORE = "store";
  static final String OBSERVATION = "observation";
  static final String DOCUMENT = ",\"document\":";

  /** So many rows are fetched at a time; all at once would not fit into memory. */
  private static final int ROWS_AT_A_TIME = 500;

  private static final String REVISIONS =
      "SELECT kind, id, number, revision, written, author, body FROM document"
          + " ORDER BY kind, id, number";

  private static final String OBSERVATIONS =
      "SELECT trial, number, id, revision, written, author, body FROM observation"
          + " ORDER BY trial, number, id";

  private static final String COUNT =
      "SELECT (SELECT count(*) FROM document) + (SELECT count(*) FROM observation)";

  private Dump() {}

  /** Writes the store as it stands at this moment; others may go on writing. */
  public static void write(SqlStore store, OutputStream out) {
    store
        .database()
        .read(
            connection -> {
              return connection.<@Nullable Void, RuntimeException>inTransaction(
                  TransactionIsolationLevel.SERIALIZABLE,
                  handle -> {
                    all(handle, out);
                    return null;
                  });
            });
  }

  private static void all(Handle handle, OutputStream out) {
    var at = Counters.At.read(handle);
    var head = new LinkedHashMap<String, Object>();
    head.put("kind", STORE);
    head.put("schema", Versions.ofThisBuild().store());
    head.put("revision", at.revision());
    head.put("trials", at.trials());
    head.put("lines", handle.createQuery(COUNT).mapTo(Long.class).one());
    line(out, head, null);
    each(handle, REVISIONS, row -> line(out, revision(row), row.getString(7)));
    each(handle, OBSERVATIONS, row -> line(out, observation(row), row.getString(7)));
  }

  private interface Row {
    void take(ResultSet row) throws SQLException;
  }

  private static void each(Handle handle, String sql, Row taker) {
    try (var query = handle.createQuery(sql).setFetchSize(ROWS_AT_A_TIME)) {
      query
          .map(
              (row, context) -> {
                taker.take(row);
                return true;
              })
          .forEach(taken -> {});
    }
  }

  private static Map<String, Object> revision(ResultSet row) throws SQLException {
    var line = new LinkedHashMap<String, Object>();
    line.put("kind", row.getString(1));
    line.put("id", row.getString(2));
    line.put("number", row.getInt(3));
    return written(line, row);
  }

  private static Map<String, Object> observation(ResultSet row) throws SQLException {
    var line = new LinkedHashMap<String, Object>();
    line.put("kind", OBSERVATION);
    line.put("trial", row.getString(1));
    line.put("number", row.getInt(2));
    line.put("id", row.getString(3));
    return written(line, row);
  }

  private static Map<String, Object> written(Map<String, Object> line, ResultSet row)
      throws SQLException {
    line.put("revision", row.getLong(4));
    line.put("written", row.getString(5));
    line.put("author", row.getString(6));
    return line;
  }

  private static void line(OutputStream out, Map<String, Object> head, @Nullable String document) {
    byte[] begin = ResultJson.bytes(head);
    try {
      out.write(begin, 0, begin.length - 1);
      if (document != null) {
        out.write((DOCUMENT + document).getBytes(StandardCharsets.UTF_8));
      }
      out.write("}\n".getBytes(StandardCharsets.UTF_8));
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
