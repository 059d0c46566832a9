package tamis.api.store;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Writes that wait at the same moment are kept together, and wait for the disk once. A write that
 * comes alone goes at once, on its own thread. The first of those that waited meanwhile then keeps
 * them all. Each has its own outcome, after what it wrote is on the disk.
 */
final class Turns {
  /** More would make the first wait for the last. */
  private static final int MOST_TOGETHER = 64;

  private final Function<List<Write>, List<Outcome>> keeping;
  private final Deque<Turn> waiting = new ArrayDeque<>();
  private boolean busy;

  /**
   * @param keeping keeps writes in one transaction, called by one thread at a time
   */
  Turns(Function<List<Write>, List<Outcome>> keeping) {
    this.keeping = keeping;
  }

  private static final class Turn {
    private final Write write;
    private final Thread thread = Thread.currentThread();
    private volatile boolean leads;
    private volatile @Nullable Outcome outcome;
    private volatile @Nullable RuntimeException failed;

    Turn(Write write) {
      this.write = write;
    }

    boolean isDone() {
      return outcome != null || failed != null;
    }
  }

  /**
   * Keeps one write.
   *
   * @throws RuntimeException that keeping it ended with
   */
  Outcome keep(Write write) {
    var turn = new Turn(write);
    if (waits(turn)) {
      await(turn);
    }
    if (!turn.isDone()) {
      lead();
    }
    @Nullable RuntimeException failed = turn.failed;
    if (failed != null) {
      throw failed;
    }
    return Objects.requireNonNull(turn.outcome);
  }

  /** How many wait for the next turn. */
  synchronized int waiting() {
    return waiting.size();
  }

  private synchronized boolean waits(Turn turn) {
    waiting.add(turn);
    boolean waits = busy;
    busy = true;
    return waits;
  }

  private static void await(Turn turn) {
    boolean stopped = false;
    while (!turn.leads && !turn.isDone()) {
      LockSupport.park(turn);
      stopped |= Thread.interrupted(); // what is on its way to the disk cannot be called back
    }
    if (stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private void lead() {
    List<Turn> turns = first();
    try {
      keep(turns);
    } catch (Error broken) { // of memory, say: those who wait must not wait for ever
      var failed = new IllegalStateException("the writing broke off", broken);
      turns.stream().filter(turn -> !turn.isDone()).forEach(turn -> turn.failed = failed);
      throw broken;
    } finally {
      passOn();
      turns.forEach(turn -> LockSupport.unpark(turn.thread));
    }
  }

  private synchronized List<Turn> first() {
    List<Turn> turns = new ArrayList<>();
    while (turns.size() < MOST_TOGETHER && !waiting.isEmpty()) {
      turns.add(waiting.remove());
    }
    return turns;
  }

  private synchronized void passOn() {
    @Nullable Turn next = waiting.peek();
    busy = next != null;
    if (next != null) {
      next.leads = true;
      LockSupport.unpark(next.thread);
    }
  }

  private void keep(List<Turn> turns) {
    try {
      List<Outcome> outcomes = keeping.apply(turns.stream().map(turn -> turn.write).toList());
      for (int i = 0; i < turns.size(); i++) {
        turns.get(i).outcome = outcomes.get(i);
      }
    } catch (RuntimeException failed) {
      if (turns.size() == 1 || isAway(failed)) {
        turns.forEach(turn -> turn.failed = failed);
      } else { // one of them is too large, or breaks: the others need not go down with it
        turns.forEach(turn -> keep(List.of(turn)));
      }
    }
  }

  /** All would wait for what is away, one after the other. */
  private static boolean isAway(RuntimeException failed) {
    return failed instanceof Refusal refusal
        && refusal.faults().get(0).code() == FaultCode.STORE_UNAVAILABLE;
  }
}
