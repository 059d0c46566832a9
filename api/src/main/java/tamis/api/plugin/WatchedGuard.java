package tamis.api.plugin;

import java.time.Duration;
import java.util.Objects;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Calls a dropped-in plugin on a thread of its own and waits for so long. A thread cannot be
 * stopped from outside: a call that does not end is left alone, and after a few of them the plugin
 * is called no more.
 */
final class WatchedGuard implements Guard, AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(WatchedGuard.class);
  private static final int MOST_LATE = 3;

  /** Until when the call that runs on this thread may take; a call within it ends sooner. */
  private static final ThreadLocal<Long> DEADLINE = new ThreadLocal<>();

  private final String plugin;
  private final Duration limit;
  private final ExecutorService workers;
  private final AtomicInteger stuck = new AtomicInteger();
  private final AtomicInteger lateInARow = new AtomicInteger();
  private volatile boolean off;

  WatchedGuard(String plugin, ClassLoader loader, Duration limit) {
    this.plugin = plugin;
    this.limit = limit;
    this.workers =
        Executors.newCachedThreadPool(
            work -> {
              var thread = new Thread(work, "plugin " + plugin);
              thread.setDaemon(true);
              thread.setContextClassLoader(loader);
              return thread;
            });
  }

  @Override
  public <T> T run(String calculation, Supplier<T> call) {
    if (off) {
      throw switchedOff();
    }
    long nanos = nanosAllowed();
    var work = new Work<>(call, System.nanoTime() + nanos);
    var task = new FutureTask<>(work::done);
    workers.execute(task);
    try {
      T value = task.get(nanos, TimeUnit.NANOSECONDS);
      lateInARow.set(0);
      return value;
    } catch (TimeoutException late) {
      task.cancel(true);
      work.overdue();
      switchOffIfTooMany();
      throw tooSlow(calculation);
    } catch (InterruptedException stopped) {
      task.cancel(true);
      Thread.currentThread().interrupt();
      throw tooSlow(calculation);
    } catch (ExecutionException thrown) {
      lateInARow.set(0);
      var cause = Objects.requireNonNullElse(thrown.getCause(), thrown);
      if (cause instanceof Refusal refusal) {
        throw refusal;
      }
      LOG.error("plugin {} failed at {}", plugin, calculation, Guard.shortened(cause));
      throw Guard.failed(plugin, calculation);
    }
  }

  /** The whole time, or nine tenths of what the call around this one has left: it is told first. */
  private long nanosAllowed() {
    Long deadline = DEADLINE.get();
    return deadline == null
        ? limit.toNanos()
        : Math.min(limit.toNanos(), Math.max(0, deadline - System.nanoTime()) / 10 * 9);
  }

  @Override
  public boolean isOff() {
    return off;
  }

  @Override
  public void close() {
    workers.shutdownNow();
  }

  private void switchOffIfTooMany() {
    if (Math.max(stuck.get(), lateInARow.incrementAndGet()) >= MOST_LATE && !off) {
      off = true;
      LOG.error(
          "plugin {} is switched off: {} of its calls did not end in time", plugin, MOST_LATE);
    }
  }

  private Refusal tooSlow(String calculation) {
    var allowed = limit.toSeconds() + " s";
    return new Refusal(
        new Fault(
            FaultCode.TOO_SLOW,
            "",
            calculation,
            "at most " + allowed,
            "plugin `" + plugin + "` took longer than " + allowed + " for `" + calculation + "`"));
  }

  private Refusal switchedOff() {
    return Refusal.of(
        FaultCode.SWITCHED_OFF,
        "plugin `"
            + plugin
            + "` is switched off: "
            + MOST_LATE
            + " of its calls did not end in time; start again without it or with a mended one");
  }

  /** One call, and whether it is still running after nobody waits for it. */
  private final class Work<T> {
    private final Supplier<T> call;
    private final long deadline;
    private boolean ended;
    private boolean overdue;

    Work(Supplier<T> call, long deadline) {
      this.call = call;
      this.deadline = deadline;
    }

    T done() {
      DEADLINE.set(deadline);
      try {
        return call.get();
      } finally {
        DEADLINE.remove();
        end();
      }
    }

    private synchronized void end() {
      ended = true;
      if (overdue) {
        stuck.decrementAndGet();
      }
    }

    synchronized void overdue() {
      if (!ended) {
        overdue = true;
        stuck.incrementAndGet();
      }
    }
  }
}
