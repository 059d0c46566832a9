package tamis.api.store;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
  private static final int MOST_UNFILED = 1_000;

  /** A moment without writes is taken, too, so that a search after it finds all filed. */
  private static final long MILLIS_OF_REST = 2_000;

  private final Database database;
  private final AtomicInteger waiting = new AtomicInteger();
  private final AtomicBoolean resting = new AtomicBoolean();
  private final ScheduledThreadPoolExecutor clerk =
      new ScheduledThreadPoolExecutor(
          1, Filing::thread, new DiscardPolicy()); // once it is closed, the next start files

  /** Puts the words of documents into the index, in the order of its pages. */
  private final String filed;

  private record Taken(Kind kind, String id, String gone) {}

  Filing(Database database) {
    this.database = database;
    this.filed =
        "INSERT INTO finding (kind, term, id) SELECT h.kind, 'w:' || w.value, h.id FROM "
            + database.dialect().rows("?", "i")
            + " CROSS JOIN head h CROSS JOIN "
            + database.dialect().rows("substr(h.words, 2)", "w")
            + " WHERE h.kind = ? AND h.id = i.value AND h.words <> ''"
            + " ORDER BY 1, 2, 3 ON CONFLICT DO NOTHING";
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

  /**
   * Files all that waits as it begins; on PostgreSQL others write meanwhile. What they write waits
   * for the next time, so that the index is right in the end, whichever of their words are seen
   * here.
   */
  void all(Handle handle) {
    List<Taken> all =
        handle
            .createQuery("DELETE FROM unfiled RETURNING kind, id, gone")
            .map(
                (row, c) ->
                    new Taken(Kind.of(row.getString(1)), row.getString(2), row.getString(3)))
            .list();
    Map<Kind, Set<String>> ids = new EnumMap<>(Kind.class);
    for (Taken one : all) {
      Findings.remove(handle, one.kind(), one.id(), Findings.words(one.gone()));
      ids.computeIfAbsent(one.kind(), kind -> new LinkedHashSet<>()).add(one.id());
    }
    ids.forEach((kind, some) -> handle.execute(filed, String.join(" ", some), kind.word()));
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
