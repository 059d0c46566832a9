package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.lessThan;

import java.io.IOException;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.record.Limit;
import tamis.engine.record.Limits;

/** Each limit is a setting: what keeps to it is answered, one more is refused. */
class LimitsTest {
  private static final String CONVERSION = "/v1/calculations/conversion";
  private static final String BODY = "{\"quantity\":\"1 kg\",\"unit\":\"g\"}";

  private static Limits limits(int lines, int depth, int expandedLines, int digits) {
    return new Limits(Map.of(Limit.LINES, lines), depth, expandedLines, digits);
  }

  private static String lines(int count) {
    return "{\"lines\":["
        + "{\"ingredient\":\"water\",\"quantity\":\"1 g\"},".repeat(count - 1)
        + "{\"ingredient\":\"water\",\"quantity\":\"1 g\"}]}";
  }

  @Test
  void a_body_has_so_many_bytes() throws IOException {
    try (var served = Served.with().bodyBytes(BODY.length()).open()) {
      served.json(BODY).post(CONVERSION).then().statusCode(200);
      served
          .json(BODY + " ")
          .post(CONVERSION)
          .then()
          .statusCode(413)
          .body("faults[0].code", is("too-large"));
      var chunked =
          Raw.ask(
              served.port(),
              "POST "
                  + CONVERSION
                  + " HTTP/1.1\r\nHost: x\r\nConnection: close\r\nContent-Type: application/json\r\n"
                  + "Transfer-Encoding: chunked\r\n\r\n"
                  + Integer.toHexString(BODY.length() + 1)
                  + "\r\n"
                  + BODY
                  + " \r\n0\r\n\r\n");
      assertThat(chunked.status()).isEqualTo(413);
    }
  }

  @Test
  void a_body_that_is_too_large_is_refused_before_it_is_sent() throws IOException {
    try (var served = Served.with().bodyBytes(100).open();
        var raw = new Raw(served.port())) {
      raw.send(
          "POST "
              + CONVERSION
              + " HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\n"
              + "Content-Length: 100000000\r\nExpect: 100-continue\r\n\r\n");
      assertThat(raw.line()).isEqualTo("HTTP/1.1 413 Payload Too Large");
    }
  }

  @Test
  void a_query_has_so_many_bytes() {
    try (var served = Served.with().queryBytes(100).open()) {
      var query = "quantity=1+kg&unit=g&k=";
      var longest = query + "x".repeat(100 - query.length());
      served.ask().get(CONVERSION + "?" + longest).then().statusCode(200);
      served
          .ask()
          .get(CONVERSION + "?" + longest + "x")
          .then()
          .statusCode(414)
          .body("faults.code", hasItem("too-long-address"));
      served.ask().get("/v1/formulas?q=" + "x".repeat(99)).then().statusCode(414);
    }
  }

  @Test
  void a_path_has_so_many_bytes() {
    try (var served = Served.with().queryBytes(100).open()) {
      served.ask().get("/v1/formulas/" + "x".repeat(87)).then().statusCode(404);
      served.ask().get("/v1/formulas/" + "x".repeat(88)).then().statusCode(414);
      served.ask().get("/" + "x".repeat(100)).then().statusCode(414);
    }
  }

  @Test
  void json_nests_so_deep() {
    try (var served = Served.with().nesting(4).open()) {
      served
          .json("{\"a\":[[[1]]]}")
          .post(CONVERSION)
          .then()
          .body("faults.code", hasItem("unknown-field"));
      served
          .json("{\"a\":[[[[1]]]]}")
          .post(CONVERSION)
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("too-deep"));
    }
    try (var served = Served.usual()) {
      served.json("[".repeat(200_000)).post(CONVERSION).then().statusCode(lessThan(500));
    }
  }

  @Test
  void a_number_has_so_many_digits() {
    try (var served = Served.with().limits(limits(10, 5, 100, 5)).open()) {
      served
          .json("{\"a\":12345}")
          .post(CONVERSION)
          .then()
          .body("faults.code", hasItem("unknown-field"));
      served
          .json("{\"a\":123456}")
          .post(CONVERSION)
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("too-many-digits"));
    }
  }

  @Test
  void a_formula_has_so_many_lines() {
    try (var served = Served.with().limits(limits(3, 5, 100, 40)).open()) {
      served.holding("soup", lines(3));
      served
          .json(lines(4))
          .header("If-None-Match", "*")
          .put("/v1/formulas/soup-of-four")
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("too-many"))
          .body("detail", containsString("at most 3"));
    }
  }

  @Test
  void formulas_nest_so_deep() {
    try (var served = Served.with().limits(limits(10, 3, 100, 40)).open()) {
      served.holding("level-1", lines(1));
      for (int level = 2; level <= 4; level++) {
        served.holding("level-" + level, part(level - 1));
      }
      served
          .json(part(4))
          .header("If-None-Match", "*")
          .put("/v1/formulas/level-5")
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("too-deep"));
    }
  }

  private static String part(int level) {
    return "{\"lines\":[{\"formula\":\"level-" + level + "\",\"quantity\":\"1 kg\"}]}";
  }

  @Test
  void a_batch_has_so_many_lines_over_all_parts() {
    try (var served = Served.with().limits(limits(10, 5, 6, 40)).open()) {
      served.holding("three", lines(3));
      var twice =
          "{\"lines\":[{\"formula\":\"three\",\"quantity\":\"1 kg\"},{\"formula\":\"three\",\"quantity\":\"1 kg\"}%s]}";
      served
          .json("{\"formula\":" + twice.formatted("") + "}")
          .post("/v1/calculations/scaling")
          .then()
          .statusCode(200);
      served
          .json(
              "{\"formula\":"
                  + twice.formatted(",{\"ingredient\":\"water\",\"quantity\":\"1 g\"}")
                  + "}")
          .post("/v1/calculations/scaling")
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("too-many"));
    }
  }
}
