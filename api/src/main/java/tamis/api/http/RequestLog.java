package tamis.api.http;

import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;

/** One line a request on stderr: its number since the start, route, status and time. */
interface RequestLog {
  void told(String verb, String route, int status, long nanos);

  static RequestLog of(boolean on) {
    return on ? new Lines(System.err) : (verb, route, status, nanos) -> {};
  }

  /** Writes lines. */
  final class Lines implements RequestLog {
    private final AtomicLong numbers = new AtomicLong();
    private final PrintStream out;

    Lines(PrintStream out) {
      this.out = out;
    }

    @Override
    public void told(String verb, String route, int status, long nanos) {
      out.println(
          String.format(
              Locale.ROOT,
              "%d %s %s %d %.1f ms",
              numbers.incrementAndGet(),
              verb,
              route,
              status,
              nanos / 1e6));
    }
  }
}
