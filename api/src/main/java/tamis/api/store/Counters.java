package tamis.api.store;

import org.jdbi.v3.core.Handle;
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

  /** The revision over documents, and that over trials. */
  record At(long revision, long trials) {
    static At read(Handle handle) {
      return handle
          .createQuery("SELECT revision, trials FROM store")
          .map((row, context) -> new At(row.getLong(1), row.getLong(2)))
          .one();
    }

    /** One write later. */
    At after(Kind kind) {
      return kind.hasOwnCount() ? new At(revision, trials + 1) : new At(revision + 1, trials);
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
    known =
        new At(
            Math.max(known.revision(), seen.revision()), Math.max(known.trials(), seen.trials()));
  }
}
