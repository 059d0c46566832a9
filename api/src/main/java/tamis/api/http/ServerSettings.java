package tamis.api.http;

import java.time.Duration;
import java.util.List;
import tamis.engine.record.Limits;

/**
 * What the door is told when it opens.
 *
 * @param host address to serve at
 * @param port port to serve at; 0 takes a free one
 * @param log whether each request is told on stderr
 * @param origins origins whose pages may call; {@code *} for all
 * @param bodyBytes bytes of a body that are read
 * @param lineBytes bytes of a line of a stream that are read
 * @param queryBytes bytes of a query that are read
 * @param nesting how deep JSON may nest
 * @param limits counts that are read and expanded
 * @param sender time for a caller to send a request, and to stay silent
 * @param cacheBytes bytes of answers that are kept
 */
public record ServerSettings(
    String host,
    int port,
    boolean log,
    List<String> origins,
    int bodyBytes,
    int lineBytes,
    int queryBytes,
    int nesting,
    Limits limits,
    Duration sender,
    int cacheBytes) {
  public ServerSettings {
    origins = List.copyOf(origins);
  }
}
