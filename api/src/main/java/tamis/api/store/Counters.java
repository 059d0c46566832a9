package tamis.api.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
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
      reached(database.read(At::read));
      nextLook = from + NANOS_BETWEEN_LOOKS;
    } catch (Refusal unreachable) {
      nextLook = System.nanoTime() + NANOS_AFTER_FAILURE;
    }
  }

  /** Something was written, here or elsewhere; what is known never goes back. */
  synchronized void reached(At seen) {
    known = At.latest(known, seen);
  }
}
