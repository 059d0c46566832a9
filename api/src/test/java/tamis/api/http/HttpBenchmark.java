package tamis.api.http;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/**
 * Requests a second and their times, against handlers of bare Javalin that send the same headers
 * and as many bytes. Not run by itself: {@code mvn -q -pl api -am test -Dtest=HttpBenchmark
 * -Dsurefire.failIfNoSpecifiedTests=false}. Client and both servers share the machine; rounds take
 * turns.
 */
class HttpBenchmark {
  private static final int ROUNDS = 7;
  private static final int CLIENTS = 2;
  private static final int REQUESTS = 6_000;
  private static final int ADDRESSES = 1_000;
  private static final int LINES = 40;

  /** What one round came to: nanoseconds of each request, and of all together. */
  private record Round(long[] nanos, long whole) {
    double perSecond() {
      return nanos.length * 1e9 / whole;
    }

    double micros(double share) {
      return nanos[(int) (nanos.length * share)] / 1_000.0;
    }
  }

  @Test
  void one_number_by_address() throws Exception {
    IntFunction<String> address =
        n ->
            "/v1/calculations/conversion?quantity="
                + (n % ADDRESSES + 1)
                + "+cup&ingredient=all-purpose-flour&unit=g&format=text&pick=/amount";
    IntFunction<byte[]> request =
        n ->
            ("GET " + address.apply(n) + " HTTP/1.1\r\nHost: localhost\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8);
    try (var served = Served.usual();
        var connection = new KeptOpen(served.port())) {
      Map<String, KeptOpen.Sent> answers = new HashMap<>();
      for (int n = 0; n < ADDRESSES; n++) {
        String query = address.apply(n).split("\\?", 2)[1];
        answers.put(query, connection.ask(request.apply(n)));
      }
      var bare = Javalin.create(config -> config.showJavalinBanner = false);
      bare.get(
          "/v1/calculations/{name}",
          call -> {
            KeptOpen.Sent answer = answers.get(call.queryString());
            into(answer, call).result(answer.body());
          });
      compare("GET conversion as text", served.port(), bare, request);
    }
  }

  @Test
  void a_formula_scaled_again_and_again() throws Exception {
    scaled("POST scaling, 4 KB, 1,000 different bodies by turns", ADDRESSES);
  }

  @Test
  void a_formula_scaled_anew_each_time() throws Exception {
    scaled("POST scaling, 4 KB, never the same body twice", Integer.MAX_VALUE);
  }

  private static void scaled(String what, int different) throws Exception {
    IntFunction<byte[]> request =
        n -> {
          byte[] body = formula(n % different).getBytes(StandardCharsets.UTF_8);
          byte[] head =
              ("POST /v1/calculations/scaling?sources=no HTTP/1.1\r\nHost: localhost\r\n"
                      + "Content-Type: application/json\r\nContent-Length: "
                      + body.length
                      + "\r\n\r\n")
                  .getBytes(StandardCharsets.UTF_8);
          byte[] all = Arrays.copyOf(head, head.length + body.length);
          System.arraycopy(body, 0, all, head.length, body.length);
          return all;
        };
    try (var served = Served.usual();
        var connection = new KeptOpen(served.port())) {
      KeptOpen.Sent answer = connection.ask(request.apply(7));
      System.out.printf(
          Locale.ROOT,
          "%s: body %,d bytes, answer %,d bytes%n",
          what,
          formula(7).length(),
          answer.body().length);
      var json = new ObjectMapper();
      JsonNode tree = json.readTree(answer.body());
      var bare = Javalin.create(config -> config.showJavalinBanner = false);
      bare.post(
          "/v1/calculations/{name}",
          call -> {
            JsonNode read = json.readTree(call.bodyAsBytes());
            if (read.size() != 2) {
              throw new IllegalStateException("not what was sent");
            }
            into(answer, call).result(json.writeValueAsBytes(tree));
          });
      compare(what, served.port(), bare, request);
    }
  }

  /** The same headers, but for those that a server writes itself. */
  private static Context into(KeptOpen.Sent answer, Context call) {
    for (String line : answer.headers()) {
      int colon = line.indexOf(':');
      String name = line.substring(0, colon);
      if (!Set.of("content-length", "content-type", "transfer-encoding")
          .contains(name.toLowerCase(Locale.ROOT))) {
        call.header(name, line.substring(colon + 1).strip());
      }
    }
    return call.contentType(answer.type());
  }

  private static String formula(int n) {
    var lines = new ArrayList<String>();
    String[] foods = {"bread-flour", "water", "salt", "butter-unsalted", "sugar-granulated"};
    for (int line = 0; line < LINES; line++) {
      lines.add(
          "{\"ingredient\":\"%s\",\"quantity\":\"%d.5 g\",\"stage\":\"mixing\"}"
              .formatted(foods[line % foods.length], 100 + line));
    }
    return "{\"formula\":{\"title\":\"A long loaf\",\"measures\":\"metric\",\"lines\":["
        + String.join(",", lines)
        + "],\"stages\":[{\"id\":\"mixing\",\"title\":\"Mix\"}],\"notes\":\""
        + "Keep it cool. ".repeat(60)
        + "\"},\"to\":{\"mass\":\"%d.%03d kg\"}}".formatted(3 + n / 1_000, n % 1_000);
  }

  private static void compare(String what, int port, Javalin bare, IntFunction<byte[]> request)
      throws Exception {
    bare.start("127.0.0.1", 0);
    try {
      var ours = new ArrayList<Round>();
      var theirs = new ArrayList<Round>();
      int sent = 0;
      for (int round = 0; round <= ROUNDS; round++) {
        Round one = round(port, request, sent);
        Round other = round(bare.port(), request, sent);
        sent += REQUESTS * CLIENTS;
        if (round > 0) { // the first one warms up
          ours.add(one);
          theirs.add(other);
        }
      }
      told(what + ", Tamis", ours);
      told(what + ", bare", theirs);
      System.out.printf(
          Locale.ROOT,
          "%s: %.0f %% of the requests a second, p50 %.2f ×%n",
          what,
          100 * median(ours).perSecond() / median(theirs).perSecond(),
          median(ours).micros(0.5) / median(theirs).micros(0.5));
    } finally {
      bare.stop();
    }
  }

  private static void told(String what, List<Round> rounds) {
    Round middle = median(rounds);
    System.out.printf(
        Locale.ROOT,
        "%s: %,.0f requests/s, p50 %.0f µs, p99 %.0f µs%n",
        what,
        middle.perSecond(),
        middle.micros(0.5),
        middle.micros(0.99));
  }

  private static Round median(List<Round> rounds) {
    var sorted = new ArrayList<>(rounds);
    sorted.sort(Comparator.comparing(Round::perSecond));
    return sorted.get(sorted.size() / 2);
  }

  private static Round round(int port, IntFunction<byte[]> request, int first) throws Exception {
    var clients = Executors.newFixedThreadPool(CLIENTS);
    try {
      var work = new ArrayList<Callable<long[]>>();
      for (int client = 0; client < CLIENTS; client++) {
        int from = first + client * REQUESTS;
        work.add(() -> requests(port, request, from));
      }
      long start = System.nanoTime();
      long[] all = new long[0];
      for (var done : clients.invokeAll(work)) {
        long[] nanos = done.get();
        all = Arrays.copyOf(all, all.length + nanos.length);
        System.arraycopy(nanos, 0, all, all.length - nanos.length, nanos.length);
      }
      long whole = System.nanoTime() - start;
      Arrays.sort(all);
      return new Round(all, whole);
    } finally {
      clients.shutdownNow();
    }
  }

  private static long[] requests(int port, IntFunction<byte[]> request, int first)
      throws IOException {
    long[] nanos = new long[REQUESTS];
    try (var connection = new KeptOpen(port)) {
      for (int n = 0; n < REQUESTS; n++) {
        byte[] bytes = request.apply(first + n);
        long start = System.nanoTime();
        connection.ask(bytes);
        nanos[n] = System.nanoTime() - start;
      }
    }
    return nanos;
  }
}
