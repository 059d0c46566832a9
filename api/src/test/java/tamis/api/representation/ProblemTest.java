package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.FaultKind;
import tamis.engine.fault.Refusal;

class ProblemTest {
  private static final Fault FLOUR =
      new Fault(
          FaultCode.OUT_OF_BOUNDS,
          "/to/flour",
          "0 g",
          "more than 0 g",
          "`flour` must be more than 0 g, was 0 g");

  @Test
  void all_faults_are_told_with_their_places() {
    Problem problem =
        Problem.of(new Refusal(List.of(FLOUR, Fault.of(FaultCode.UNKNOWN_PAN, "no such pan"))));

    assertThat(new String(problem.bytes(), UTF_8))
        .isEqualTo(
            "{\"type\":\"about:blank\",\"title\":\"Unprocessable Content\",\"status\":422,"
                + "\"detail\":\"`flour` must be more than 0 g, was 0 g; no such pan\",\"faults\":["
                + "{\"code\":\"out-of-bounds\",\"pointer\":\"/to/flour\",\"given\":\"0 g\","
                + "\"allowed\":\"more than 0 g\","
                + "\"message\":\"`flour` must be more than 0 g, was 0 g\"},"
                + "{\"code\":\"unknown-pan\",\"pointer\":\"\",\"message\":\"no such pan\"}]}");
  }

  @Test
  void a_cell_gets_one_line() {
    assertThat(Problem.of(FaultCode.NOT_FOUND, "no formula\n`brioche`").text())
        .isEqualTo("! no formula `brioche`");
  }

  @Test
  void ten_thousand_faults_are_counted_not_told() {
    List<Fault> many =
        IntStream.range(0, 10_000)
            .mapToObj(i -> Fault.of(FaultCode.NULL, "/lines/" + i, "null, null, null"))
            .toList();

    Problem problem = Problem.of(new Refusal(many));
    assertThat(problem.faults()).hasSize(1_000);
    assertThat(problem.detail()).endsWith("(and 9000 faults more)").hasSizeLessThan(2_100);
  }

  @Test
  void a_long_detail_is_cut_between_characters() {
    Fault first = Fault.of(FaultCode.NULL, "x".repeat(1_000));
    Fault second = Fault.of(FaultCode.NULL, "y".repeat(997) + "🍞");

    Problem problem = Problem.of(new Refusal(List.of(first, second)));
    assertThat(problem.detail()).endsWith("y…").hasSize(2_000);
    assertThat(problem.faults().get(1).message()).endsWith("y🍞");
  }

  @Test
  void the_weightiest_fault_rules_the_status() {
    Fault twice = Fault.of(FaultCode.DUPLICATE_NAME, "twice");

    assertThat(Statuses.of(new Refusal(List.of(FLOUR, twice)))).isEqualTo(400);
    assertThat(Problem.of(new Refusal(List.of(FLOUR, twice))).status()).isEqualTo(400);
  }

  @ParameterizedTest
  @CsvSource({
    "MALFORMED, 400, Bad Request",
    "MEANINGLESS, 422, Unprocessable Content",
    "ABSENT, 404, Not Found",
    "CONFLICT, 409, Conflict",
    "STALE, 412, Precondition Failed",
    "UNCONDITIONAL, 428, Precondition Required",
    "UNIDENTIFIED, 401, Unauthorized",
    "FORBIDDEN, 403, Forbidden",
    "WRONG_VERB, 405, Method Not Allowed",
    "UNACCEPTABLE, 406, Not Acceptable",
    "WRONG_TYPE_OF_BODY, 415, Unsupported Media Type",
    "TOO_LARGE, 413, Content Too Large",
    "TOO_LONG_ADDRESS, 414, URI Too Long",
    "TOO_OFTEN, 429, Too Many Requests",
    "BROKEN, 500, Internal Server Error",
    "UNAVAILABLE, 503, Service Unavailable",
    "TOO_SLOW, 504, Gateway Timeout",
    "FULL, 507, Insufficient Storage",
  })
  void each_kind_has_its_status(FaultKind kind, int status, String title) {
    assertThat(Statuses.of(kind)).isEqualTo(status);
    assertThat(Statuses.title(status)).isEqualTo(title);
  }

  @ParameterizedTest
  @EnumSource(FaultKind.class)
  void no_two_kinds_share_a_status(FaultKind kind) {
    for (FaultKind other : FaultKind.values()) {
      assertThat(Statuses.of(other) == Statuses.of(kind)).isEqualTo(other == kind);
    }
  }
}
