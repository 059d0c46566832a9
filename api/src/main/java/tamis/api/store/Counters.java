package tamis.api.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;

/**
 * How far a store has been written, as this program knows it. What another program writes is seen
 * within a quarter of a second; if the database cannot be reached, what is known goes on to hold.
 */
final class Counters {
  /** Below the 250 ms that are promised, by the time that a look takes. */
  private static final long NANOS_BETWEEN_LOOKS = 200_000_000L;

  /** Nobody waits again and again for a database that is away. */
  private static final long NANOS_AFTER_FAILURE = 2_000_000_000L;

  private final Database database;
  private final boolean shared;
  private final Map<Kind, Long> changed = new EnumMap<>(Kind.class);
  private volatile At known;
  private volatile long nextLook;

  /**
   * The revision over documents, and that over trials.
   *
   * @param written when the first of them was, or null if there is none yet
   */
  record At(long revision, long trials, @Nullable Instant written) {
    static final String SELECTED = "SELECT revision, trials, written FROM store";

    static At read(Handle handle) {
      return handle.createQuery(SELECTED).map((row, context) -> of(row)).one();
    }

    static At of(ResultSet row) throws SQLException {
      @Nullable String written = row.getString(3);
      return new At(
          row.getLong(1), row.getLong(2), written == null ? null : Instant.parse(written));
    }

    /** The one that documents of a kind have. */
    long of(Kind kind) {
      return kind.hasOwnCount() ? trials : revision;
    }

    /** One write later. */
    At after(Kind kind, Instant moment) {
      return kind.hasOwnCount()
          ? new At(revision, trials + 1, written)
          : new At(revision + 1, trials, moment);
    }

    private static At latest(At one, At other) {
      return new At(
          Math.max(one.revision, other.revision),
          Math.max(one.trials, other.trials),
          one.revision >= other.revision ? one.written : other.written);
    }
  }

  /**
   * @param shared whether other programs may write
   */
  Counters(Database database, boolean shared) {
    this.database = database;
    this.shared = shared;
    this.known = database.read(At::read);
    this.nextLook = System.nanoTime() + NANOS_BETWEEN_LOOKS;
  }

  /** Counts from what is there, be it less than what was known. */
  synchronized void begin() {
    changed.clear();
    known = database.read(At::read);
  }

  At now() {
    if (shared && System.nanoTime() - nextLook > 0) {
      look();
    }
    return known;
  }

  private synchronized void look() {
    if (System.nanoTime() - nextLook <= 0) {
      return;
    }
    long from = System.nanoTime();
    try {
      look(database.read(At::read));
      nextLook = from + NANOS_BETWEEN_LOOKS;
    } catch (Refusal unreachable) {
      nextLook = System.nanoTime() + NANOS_AFTER_FAILURE;
    }
  }

  private void look(At seen) {
    for (Kind kind : Kind.values()) {
      if (seen.of(kind) > known.of(kind)) {
        changed(kind, seen.of(kind));
      }
    }
    known = At.latest(known, seen);
  }

  /** Something was written here; what is known never goes back. */
  synchronized void reached(Kind kind, long revision, Instant written) {
    boolean othersCame = revision > known.of(kind) + 1; // of which nobody knows what they wrote
    for (Kind one : Kind.values()) {
      if (one == kind || (othersCame && one.hasOwnCount() == kind.hasOwnCount())) {
        changed(one, revision);
      }
    }
    known =
        At.latest(
            known, kind.hasOwnCount() ? new At(-1, revision, null) : new At(revision, -1, written));
  }

  private void changed(Kind kind, long revision) {
    changed.merge(kind, revision, Math::max);
  }

  /** Whether surely no document of that kind was written between the two. */
  synchronized boolean isSame(Kind kind, At one, At other) {
    return changed.getOrDefault(kind, 0L) <= Math.min(one.of(kind), other.of(kind));
  }
}
