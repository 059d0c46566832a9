package tamis.api.http;

import java.io.PrintStream;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;

/** Is told of every request that was answered. */
@FunctionalInterface
interface RequestLog {
  void told(String verb, String route, int status, long nanos);

  /** Tells another, too. */
  default RequestLog and(RequestLog other) {
    return (verb, route, status, nanos) -> {
      told(verb, route, status, nanos);
      other.told(verb, route, status, nanos);
    };
  }

  /** Lines on stderr, or nothing. */
  static RequestLog of(boolean on) {
    return on ? new Lines(System.err) : (verb, route, status, nanos) -> {};
  }

  /** One line a request: its number since the start, verb, route, status and time. */
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
