package tamis.api.http;

import io.javalin.http.HandlerType;
import io.javalin.router.JavalinDefaultRouting;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.jetty.http.HttpHeader;

/**
 * All that is served, as a table of path, verb and endpoint. HEAD, OPTIONS and the refusal of other
 * verbs follow from it: what answers GET answers HEAD, and the server leaves the body away.
 */
final class Routes {
  private static final List<HandlerType> VERBS =
      List.of(
          HandlerType.GET,
          HandlerType.HEAD,
          HandlerType.POST,
          HandlerType.PUT,
          HandlerType.PATCH,
          HandlerType.DELETE,
          HandlerType.OPTIONS,
          HandlerType.TRACE,
          HandlerType.CONNECT,
          HandlerType.INVALID);

  private final Map<String, Map<HandlerType, Endpoint>> table = new LinkedHashMap<>();

  Routes get(String path, Endpoint endpoint) {
    return on(HandlerType.GET, path, endpoint).on(HandlerType.HEAD, path, endpoint);
  }

  Routes post(String path, Endpoint endpoint) {
    return on(HandlerType.POST, path, endpoint);
  }

  Routes put(String path, Endpoint endpoint) {
    return on(HandlerType.PUT, path, endpoint);
  }

  Routes delete(String path, Endpoint endpoint) {
    return on(HandlerType.DELETE, path, endpoint);
  }

  /** Every path with the verbs it takes, OPTIONS among them. */
  Map<String, Set<String>> verbs() {
    var verbs = new LinkedHashMap<String, Set<String>>();
    table.forEach((path, served) -> verbs.put(path, words(served)));
    return verbs;
  }

  void register(JavalinDefaultRouting routing, Door door) {
    table.forEach(
        (path, served) -> {
          var allow = String.join(", ", words(served));
          for (var verb : VERBS) {
            Endpoint endpoint = served.getOrDefault(verb, other(verb, allow));
            routing.addHttpHandler(verb, path, call -> door.serve(call, path, endpoint));
          }
        });
  }

  private static Endpoint other(HandlerType verb, String allow) {
    if (verb == HandlerType.OPTIONS) {
      var reply = Reply.empty(204).with(HttpHeader.ALLOW, allow);
      return call -> reply;
    }
    return call -> Problems.wrongVerb(call.req().getMethod(), allow);
  }

  private static Set<String> words(Map<HandlerType, Endpoint> served) {
    var words = new TreeSet<String>();
    served.keySet().forEach(verb -> words.add(verb.name()));
    words.add(HandlerType.OPTIONS.name());
    return words;
  }

  private Routes on(HandlerType verb, String path, Endpoint endpoint) {
    table.computeIfAbsent(path, p -> new EnumMap<>(HandlerType.class)).put(verb, endpoint);
    return this;
  }
}
