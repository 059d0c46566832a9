package tamis.api.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.engine.trial.Observation;

/** Looks documents up, each by one query on an index. */
final class SqlReads {
  private static final String ROW =
      "SELECT d.id, d.number, d.revision, d.written, d.author, d.body FROM ";

  private static final String NEWEST =
      ROW + "document d WHERE d.kind = ? AND d.id = ? ORDER BY d.number DESC LIMIT 1";

  private static final String OF_NUMBER =
      ROW + "document d WHERE d.kind = ? AND d.id = ? AND d.number = ?";

  private static final String AS_OF =
      ROW
          + "document d WHERE d.kind = ? AND d.id = ? AND d.revision <= ?"
          + " ORDER BY d.number DESC LIMIT 1";

  private static final String ALL =
      ROW + "document d WHERE d.kind = ? AND d.id = ? ORDER BY d.number";

  private static final String FOUND = "SELECT id FROM finding WHERE kind = ? AND term = ?";

  private static final String OBSERVED =
      "SELECT revision, written, author, body FROM observation WHERE trial = ? AND number = ?";

  private final DocumentCache cache;

  SqlReads(DocumentCache cache) {
    this.cache = cache;
  }

  @Nullable Stored newest(Handle handle, Kind kind, String id) {
    return handle
        .createQuery(NEWEST)
        .bind(0, kind.word())
        .bind(1, id)
        .map((row, context) -> stored(kind, row))
        .findOne()
        .filter(stored -> !stored.isDeleted())
        .orElse(null);
  }

  @Nullable Stored ofNumber(Handle handle, Kind kind, String id, int number) {
    return handle
        .createQuery(OF_NUMBER)
        .bind(0, kind.word())
        .bind(1, id)
        .bind(2, number)
        .map((row, context) -> stored(kind, row))
        .findOne()
        .orElse(null);
  }

  @Nullable Stored asOf(Handle handle, Kind kind, String id, long revision) {
    return handle
        .createQuery(AS_OF)
        .bind(0, kind.word())
        .bind(1, id)
        .bind(2, revision)
        .map((row, context) -> stored(kind, row))
        .findOne()
        .filter(stored -> !stored.isDeleted())
        .orElse(null);
  }

  List<Stored> all(Handle handle, Kind kind, String id) {
    return handle
        .createQuery(ALL)
        .bind(0, kind.word())
        .bind(1, id)
        .map((row, context) -> stored(kind, row))
        .list();
  }

  /** Ids under which a term was written down, as {@link Findings} writes it. */
  List<String> found(Handle handle, Kind kind, String term) {
    return handle.createQuery(FOUND).bind(0, kind.word()).bind(1, term).mapTo(String.class).list();
  }

  List<Observed> observations(Handle handle, String trial, int number) {
    return handle
        .createQuery(OBSERVED + " ORDER BY revision")
        .bind(0, trial)
        .bind(1, number)
        .map((row, context) -> observed(row))
        .list();
  }

  @Nullable Observed observation(Handle handle, String trial, int number, String id) {
    return handle
        .createQuery(OBSERVED + " AND id = ?")
        .bind(0, trial)
        .bind(1, number)
        .bind(2, id)
        .map((row, context) -> observed(row))
        .findOne()
        .orElse(null);
  }

  int countObservations(Handle handle, String trial, int number) {
    return handle
        .createQuery("SELECT count(*) FROM observation WHERE trial = ? AND number = ?")
        .bind(0, trial)
        .bind(1, number)
        .mapTo(Integer.class)
        .one();
  }

  private Stored stored(Kind kind, ResultSet row) throws SQLException {
    String id = row.getString(1);
    int number = row.getInt(2);
    @Nullable String body = row.getString(6);
    return new Stored(
        id,
        number,
        row.getLong(3),
        Instant.parse(row.getString(4)),
        row.getString(5),
        body == null ? null : cache.kept(kind, id, number, body));
  }

  private static Observed observed(ResultSet row) throws SQLException {
    return new Observed(
        KeptJson.record(Observation.class, row.getString(4)),
        row.getLong(1),
        Instant.parse(row.getString(2)),
        row.getString(3),
        false);
  }
}
