package tamis.api.store;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.ResultJson;

/**
 * Writes what does not come often, and whole stores; documents are kept by {@link Writing}. The row
 * of {@code store} is written first: until a transaction ends no other can write, in this program
 * or another, so that revisions become visible in their order.
 */
final class SqlWrites {
  private static final String NEXT =
      "UPDATE store SET revision = revision + 1, written = ? RETURNING revision";
  private static final String NEXT_OF_TRIALS =
      "UPDATE store SET trials = trials + 1 RETURNING trials";

  static final String UNFILED = "INSERT INTO unfiled (kind, id, gone) VALUES (?, ?, ?)";

  private static final String ROW =
      "INSERT INTO document (kind, id, number, revision, written, author, body)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?)";

  private static final String OBSERVATION =
      "INSERT INTO observation (trial, number, id, revision, written, author, body)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?)";

  private SqlWrites() {}

  /** Takes the next revision; who has it is alone until the transaction ends. */
  static long next(Handle handle, Kind kind, Instant moment) {
    var query =
        kind.hasOwnCount()
            ? handle.createQuery(NEXT_OF_TRIALS)
            : handle.createQuery(NEXT).bind(0, moment.toString());
    return query.mapTo(Long.class).one();
  }

  static @Nullable String text(@Nullable Instant moment) {
    return moment == null ? null : moment.toString();
  }

  /** Takes a document out of lists and, when that is filed, its words out of the index. */
  static void end(Handle handle, Kind kind, String id, Document last) {
    handle.execute("DELETE FROM head WHERE kind = ? AND id = ?", kind.word(), id);
    handle.execute(UNFILED, kind.word(), id, Findings.joined(last.words()));
  }

  static void row(Handle handle, Kind kind, Stored stored) {
    @Nullable Document document = stored.document();
    handle.execute(
        ROW,
        kind.word(),
        stored.id(),
        stored.number(),
        stored.revision(),
        stored.written().toString(),
        stored.author(),
        document == null ? null : document.json());
  }

  static void observation(Handle handle, String trial, int number, Observed observed) {
    byte[] json = ResultJson.bytes(observed.observation());
    observation(handle, trial, number, observed, new String(json, StandardCharsets.UTF_8));
  }

  static void observation(
      Handle handle, String trial, int number, Observed observed, @Nullable String json) {
    handle.execute(
        OBSERVATION,
        trial,
        number,
        observed.observation().id(),
        observed.revision(),
        observed.written().toString(),
        observed.author(),
        json);
  }
}
