package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import tamis.api.version.Versions;

/** What an operator sees: health, metrics and the log. */
class HealthTest {
  @Test
  void a_running_server_is_live_and_ready() {
    try (var served = Served.usual()) {
      var versions = Versions.ofThisBuild();
      served.ask().get("/health/live").then().statusCode(200).body("status", is("live"));
      served
          .ask()
          .get("/health/ready")
          .then()
          .statusCode(200)
          .body("status", is("ready"))
          .body("versions.program", is(versions.program()))
          .body("versions.spi", is(versions.spi()))
          .body("versions.tables", is(versions.tables()))
          .body("versions.store", is(versions.store()))
          .body("revision", is(0))
          .body("plugins.calculations.flatten()", hasItem("conversion"))
          .body("refused.size()", is(0));
      served.holding(
          "cream", "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
      served.ask().get("/health/ready").then().body("revision", is(1));
    }
  }

  @Test
  void requests_are_counted_by_route_and_status() {
    try (var served = Served.usual()) {
      for (int i = 0; i < 3; i++) {
        served.ask().get("/v1/formulas/none-" + i);
      }
      served.ask().request("SIEVE", "/v1/formulas");
      served
          .ask()
          .get("/metrics")
          .then()
          .statusCode(200)
          .contentType("text/plain")
          .body(
              containsString(
                  "tamis_requests_seconds_count{route=\"/v1/formulas/{id}\",status=\"404\",verb=\"GET\"} 3"))
          .body(containsString("jvm_memory_used_bytes"))
          .body(not(containsString("none-1")))
          .body(not(containsString("SIEVE")));
    }
  }

  @Test
  void what_is_no_http_is_counted_too() throws IOException {
    try (var served = Served.usual()) {
      Raw.ask(served.port(), "nonsense\r\n\r\n");
      served
          .ask()
          .get("/metrics")
          .then()
          .body(
              containsString(
                  "tamis_requests_seconds_count{route=\"-\",status=\"400\",verb=\"-\"} 1"));
    }
  }

  @Test
  void a_request_is_one_line_of_the_log() {
    var bytes = new ByteArrayOutputStream();
    var log = new RequestLog.Lines(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    log.told("GET", "/v1/formulas/{id}", 200, 1_234_567);
    log.told("HEAD", "-", 404, 9_000);
    assertThat(bytes.toString(StandardCharsets.UTF_8).lines())
        .containsExactly("1 GET /v1/formulas/{id} 200 1.2 ms", "2 HEAD - 404 0.0 ms");
  }
}
