package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What comes over the wire that no library would send, and callers who take their time. */
class ConnectionsTest {
  private static final String POST =
      "POST /v1/calculations/conversion HTTP/1.1\r\nHost: localhost\r\n"
          + "Content-Type: application/json\r\n";
  private static final String BODY = "{\"quantity\":\"1 kg\",\"unit\":\"g\"}";

  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.with().sender(Duration.ofSeconds(2)).open();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static void isProblem(Raw.Answer answer, int status) {
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.header("Content-Type")).isEqualTo("application/problem+json");
    assertThat(answer.body())
        .contains("\"status\":" + status)
        .doesNotContain("jetty", "Jetty", "Exception", "tamis.", "<");
  }

  @Test
  void a_body_in_chunks_is_read_after_the_caller_is_told_to_go_on() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(
          POST + "Connection: close\r\nTransfer-Encoding: chunked\r\nExpect: 100-continue\r\n\r\n");
      assertThat(raw.line()).isEqualTo("HTTP/1.1 100 Continue");
      assertThat(raw.line()).isEmpty();
      for (var part : new String[] {BODY.substring(0, 10), BODY.substring(10)}) {
        raw.send(Integer.toHexString(part.length()) + "\r\n" + part + "\r\n");
      }
      raw.send("0\r\n\r\n");
      var answer = raw.rest();
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.body()).contains("\"amount\":1000");
    }
  }

  @Test
  void a_request_without_a_host_is_400() throws IOException {
    isProblem(
        Raw.ask(served.port(), "GET /v1/formulas HTTP/1.1\r\nConnection: close\r\n\r\n"), 400);
  }

  @Test
  void a_first_line_that_is_none_is_400() throws IOException {
    isProblem(Raw.ask(served.port(), "nonsense\r\n\r\n"), 400);
    isProblem(Raw.ask(served.port(), "GET /v1/formulas HTTP/9\r\nHost: x\r\n\r\n"), 505);
  }

  @Test
  void an_address_that_is_none_is_400() throws IOException {
    isProblem(Raw.ask(served.port(), "GET", "/v1/formulas/%zz"), 400);
    isProblem(Raw.ask(served.port(), "GET", "/v1/calculations/conversion?quantity=%zz"), 400);
    isProblem(Raw.ask(served.port(), "GET", "/v1/calculations/conversion?quantity=%ff"), 400);
  }

  @Test
  void an_address_that_is_far_too_long_is_414() throws IOException {
    isProblem(Raw.ask(served.port(), "GET", "/v1/formulas?q=" + "x".repeat(20_000)), 414);
    isProblem(Raw.ask(served.port(), "GET", "/v1/formulas/" + "x".repeat(20_000)), 414);
    isProblem(Raw.ask(served.port(), "GET", "/v1/formulas?q=" + "x".repeat(200_000)), 414);
  }

  @Test
  void headers_that_are_far_too_long_are_431() throws IOException {
    isProblem(Raw.ask(served.port(), "GET", "/v1/formulas", "X: " + "x".repeat(100_000)), 431);
  }

  @Test
  void an_old_caller_without_a_host_is_served() throws IOException {
    assertThat(Raw.ask(served.port(), "GET /health/live HTTP/1.0\r\n\r\n").status()).isEqualTo(200);
  }

  @Test
  void several_requests_use_one_connection() throws IOException {
    try (var raw = new Raw(served.port())) {
      for (int i = 0; i < 3; i++) {
        raw.send("HEAD /health/live HTTP/1.1\r\nHost: x\r\n\r\n");
        assertThat(raw.line()).isEqualTo("HTTP/1.1 200 OK");
        while (!raw.line().isEmpty()) {
          // the other headers
        }
      }
    }
  }

  @Test
  void head_and_body_come_in_one_piece() throws IOException {
    try (var raw = new Raw(served.port())) {
      for (int i = 0; i < 20; i++) {
        raw.send("GET /health/live HTTP/1.1\r\nHost: x\r\n\r\n");
        assertThat(raw.piece()).endsWith("{\"status\":\"live\"}");
      }
    }
  }

  @Test
  void all_of_the_server_may_be_asked_for_its_options() throws IOException {
    assertThat(Raw.ask(served.port(), "OPTIONS", "*").status()).isEqualTo(204);
  }

  @Test
  void a_body_that_stops_coming_is_cut_off() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(POST + "Content-Length: 1000\r\n\r\n{");
      isProblem(raw.rest(), 408);
    }
  }

  @Test
  void a_body_that_comes_too_slowly_is_cut_off() throws Exception {
    try (var raw = new Raw(served.port())) {
      raw.send(POST + "Content-Length: 1000\r\n\r\n");
      assertThat(secondsUntilCut(raw)).isLessThan(20);
    }
  }

  @Test
  void a_head_that_comes_too_slowly_is_cut_off() throws Exception {
    try (var raw = new Raw(served.port())) {
      raw.send("GET /health/live HTTP/1.1\r\nX: ");
      assertThat(secondsUntilCut(raw)).isLessThan(20);
    }
  }

  /** A byte now and then, so that the connection is never idle for long. */
  private static long secondsUntilCut(Raw raw) throws InterruptedException {
    long from = System.nanoTime();
    for (int i = 0; i < 100; i++) {
      try {
        raw.send("x");
      } catch (IOException cut) {
        break;
      }
      Thread.sleep(300);
    }
    return Duration.ofNanos(System.nanoTime() - from).toSeconds();
  }

  @Test
  void others_are_served_while_many_are_slow() throws IOException {
    var slow = new ArrayList<Raw>();
    try {
      for (int i = 0; i < 300; i++) {
        var raw = new Raw(served.port());
        slow.add(raw);
        raw.send(i % 2 == 0 ? POST + "Content-Length: 1000\r\n\r\n{" : "GET /health/live HT");
      }
      long from = System.nanoTime();
      served.ask().get("/v1/calculations/conversion?quantity=1+kg&unit=g").then().statusCode(200);
      assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(2));
    } finally {
      for (var raw : slow) {
        raw.close();
      }
    }
  }
}
