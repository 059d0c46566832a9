package tamis.api.http;

import java.time.Duration;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.http.HttpParser;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConnection;
import org.eclipse.jetty.util.component.AbstractLifeCycle;
import org.eclipse.jetty.util.thread.Scheduler;
import org.jspecify.annotations.Nullable;

/**
 * Cuts connections on which a head takes too long. The idle time alone does not: a byte now and
 * then keeps it from passing.
 */
final class SlowHeads extends AbstractLifeCycle {
  private static final long EVERY_MILLIS = 1_000;

  private final Connector connector;
  private final long patienceNanos;
  private final Map<EndPoint, Long> since = new WeakHashMap<>();
  private volatile Scheduler.@Nullable Task next;

  SlowHeads(Connector connector, Duration patience) {
    this.connector = connector;
    this.patienceNanos = patience.toNanos();
  }

  @Override
  protected void doStart() {
    later();
  }

  @Override
  protected void doStop() {
    var task = next;
    if (task != null) {
      task.cancel();
    }
  }

  private void later() {
    next = connector.getScheduler().schedule(this::look, EVERY_MILLIS, TimeUnit.MILLISECONDS);
  }

  private void look() {
    long now = System.nanoTime();
    for (var end : connector.getConnectedEndPoints()) {
      if (!isWithinHead(end)) {
        since.remove(end);
      } else if (now - since.computeIfAbsent(end, e -> now) > patienceNanos) {
        since.remove(end);
        end.close();
      }
    }
    if (isRunning()) {
      later();
    }
  }

  private static boolean isWithinHead(EndPoint end) {
    if (!(end.getConnection() instanceof HttpConnection http)) {
      return false;
    }
    HttpParser parser = http.getParser();
    return parser.inHeaderState() && !parser.isIdle();
  }
}
