package tamis.api.store;

import java.util.List;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadPoolExecutor.DiscardPolicy;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.jdbi.v3.core.Handle;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.engine.fault.Refusal;

/**
 * Files the words of many documents together, beside the writes: each word lies on another page of
 * the index, and one document alone would write them all. Until then a search looks through {@code
 * unfiled}, which is kept short.
 */
final class Filing implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Filing.class);

  /** From here on looking through them would be felt. */
  private static final int MOST_UNFILED = 128;

  /** A moment without writes is taken, too, so that a search after it finds all filed. */
  private static final long MILLIS_OF_REST = 2_000;

  private final Database database;
  private final AtomicInteger waiting = new AtomicInteger();
  private final AtomicBoolean resting = new AtomicBoolean();
  private final ScheduledThreadPoolExecutor clerk =
      new ScheduledThreadPoolExecutor(
          1, Filing::thread, new DiscardPolicy()); // once it is closed, the next start files

  private record Gone(Kind kind, String id, String words) {}

  Filing(Database database) {
    this.database = database;
    waiting.set(database.read(Filing::count)); // filed when something is written
  }

  private static Thread thread(Runnable work) {
    var thread = new Thread(work, "filing");
    thread.setDaemon(true);
    return thread;
  }

  private static int count(Handle handle) {
    return handle.createQuery("SELECT count(*) FROM unfiled").mapTo(Integer.class).one();
  }

  /** So many documents came to be unfiled. */
  @SuppressWarnings("FutureReturnValueIgnored") // what is done tells of its failures itself
  void came(int documents) {
    if (documents == 0) {
      return;
    }
    int before = waiting.getAndAdd(documents);
    if (before / MOST_UNFILED < (before + documents) / MOST_UNFILED) {
      clerk.execute(this::file);
    } else if (resting.compareAndSet(false, true)) {
      clerk.schedule(this::file, MILLIS_OF_REST, TimeUnit.MILLISECONDS);
    }
  }

  private void file() {
    resting.set(false);
    if (waiting.getAndSet(0) == 0) {
      return;
    }
    try {
      database.useWriter(this::all);
    } catch (Refusal away) {
      LOG.warn("words are filed later");
    } catch (RuntimeException failed) {
      LOG.error("words cannot be filed; searches stay right, and slow down", failed);
    }
  }

  /** Files all; nobody else writes meanwhile. */
  void all(Handle handle) {
    handle.execute("UPDATE store SET revision = revision");
    List<Gone> all =
        handle
            .createQuery("SELECT kind, id, gone FROM unfiled WHERE gone <> ''")
            .map(
                (row, c) -> new Gone(Kind.of(row.getString(1)), row.getString(2), row.getString(3)))
            .list();
    for (Gone one : all) {
      Findings.remove(handle, one.kind(), one.id(), Findings.words(one.words()));
    }
    handle.execute(database.dialect().filed());
    handle.execute("DELETE FROM unfiled");
  }

  @Override
  public void close() {
    clerk.shutdownNow();
    try {
      clerk.awaitTermination(5, TimeUnit.SECONDS);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
