package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.is;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.api.store.MemoryStore;
import tamis.api.version.Versions;

/** What holds on every path, whatever is served there. */
class RoutesTest {
  private static final List<String> VERBS =
      List.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "TRACE", "SIEVE");

  private static Served served;

  @BeforeAll
  static void open() {
    served =
        Served.usual()
            .holding(
                "plain-cream",
                "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static Map<String, Set<String>> routes() {
    var settings = Served.with().settings();
    var plugins = Served.plugins(null, Duration.ofSeconds(10));
    return Server.routes(
            settings,
            new MemoryStore(Clock.systemUTC()),
            plugins,
            Versions.ofThisBuild(),
            new Metrics())
        .verbs();
  }

  static Stream<String> paths() {
    return routes().keySet().stream();
  }

  /** Addresses that answer well, and some that do not. */
  static Stream<String> addresses() {
    return Stream.concat(
        routes().entrySet().stream()
            .filter(route -> route.getValue().contains("GET"))
            .map(route -> filled(route.getKey()))
            .filter(address -> !address.equals("/metrics")),
        Stream.of(
            "/v1/calculations/conversion?quantity=1+stick&ingredient=butter-unsalted&unit=g",
            "/v1/calculations/conversion?quantity=1+stick&ingredient=butter-unsalted&unit=g&format=text",
            "/v1/calculations/conversion.csv?quantity=1+stick&ingredient=butter-unsalted&unit=g",
            "/v1/calculations/conversion?quantity=1&unit=g&errors=text",
            "/v1/calculations/no-such",
            "/v1/tables/densities.csv",
            "/v1/tables/no-such",
            "/v1/formulas?limit=0",
            "/v1/formulas/no-such",
            "/v1/formulas/plain-cream/",
            "/v1/nothing"));
  }

  private static String filled(String path) {
    return path.replace("{id}", path.startsWith("/v1/formulas") ? "plain-cream" : "egg")
        .replace("{number}", "1")
        .replace("{name}", path.startsWith("/v1/tables") ? "densities" : "conversion");
  }

  @ParameterizedTest
  @MethodSource("addresses")
  void head_has_status_and_headers_of_get_and_no_body(String address) throws IOException {
    var get = Raw.ask(served.port(), "GET", address);
    var head = Raw.ask(served.port(), "HEAD", address);
    assertThat(head.status()).isEqualTo(get.status());
    assertThat(head.headers()).isEqualTo(get.headers());
    assertThat(head.body()).isEmpty();
    assertThat(get.header("Content-Length")).isEqualTo(Integer.toString(get.body().length()));
  }

  @Test
  void head_of_metrics_has_the_headers_of_get_but_for_the_growing_length() throws IOException {
    var get = Raw.ask(served.port(), "GET", "/metrics");
    var head = Raw.ask(served.port(), "HEAD", "/metrics");
    assertThat(head.status()).isEqualTo(get.status()).isEqualTo(200);
    assertThat(head.header("Content-Type")).isEqualTo(get.header("Content-Type"));
    assertThat(head.body()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("paths")
  void options_is_204_and_names_the_verbs(String path) throws IOException {
    var answer = Raw.ask(served.port(), "OPTIONS", filled(path));
    assertThat(answer.status()).isEqualTo(204);
    assertThat(answer.body()).isEmpty();
    assertThat(answer.header("Allow").split(", "))
        .containsExactlyInAnyOrderElementsOf(routes().get(path));
  }

  @ParameterizedTest
  @MethodSource("paths")
  void other_verbs_are_405_and_name_those_that_are_offered(String path) throws IOException {
    var offered = routes().get(path);
    for (var verb : VERBS) {
      if (!offered.contains(verb)) {
        var answer = Raw.ask(served.port(), verb, filled(path));
        assertThat(answer.status()).as(verb).isEqualTo(405);
        assertThat(answer.header("Allow").split(", ")).containsExactlyInAnyOrderElementsOf(offered);
        assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
        if (!verb.equals("HEAD")) { // an answer to HEAD has no body
          assertThat(answer.body()).contains("wrong-verb");
        }
      }
    }
  }

  @Test
  void options_of_any_path_is_204() throws IOException {
    assertThat(Raw.ask(served.port(), "OPTIONS", "/v1/nothing").status()).isEqualTo(204);
  }

  @Test
  void what_is_not_served_is_a_404_problem() {
    served
        .ask()
        .get("/v1/nothing")
        .then()
        .statusCode(404)
        .contentType("application/problem+json")
        .body("status", is(404))
        .body("faults[0].code", is("not-found"));
  }

  @Test
  void nothing_is_redirected() throws IOException {
    assertThat(Raw.ask(served.port(), "GET", "/v1/formulas/plain-cream/").status()).isEqualTo(200);
    assertThat(Raw.ask(served.port(), "GET", "/docs/").status()).isEqualTo(200);
  }
}
