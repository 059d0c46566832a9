package tamis.api.http;

import static io.restassured.config.EncoderConfig.encoderConfig;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;

import io.restassured.RestAssured;
import io.restassured.response.ValidatableResponse;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Many lines through one calculation: in order, in constant memory, wrong ones on their place. */
class StreamsTest {
  private static final String TYPE = "application/x-ndjson";
  private static final String STREAM = "/v1/calculations/conversion/stream";
  private static final int LINE_BYTES = 10_000;

  private static Served served;

  @BeforeAll
  static void open() {
    served =
        Served.with()
            .lineBytes(LINE_BYTES)
            .open()
            .holding(
                "plain-cream",
                "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static String kilograms(int count) {
    return "{\"quantity\":\"" + count + " kg\",\"unit\":\"g\"}";
  }

  private static ValidatableResponse stream(String address, byte[] body, String... headers) {
    var asIs = encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false);
    var request =
        served.ask().config(RestAssured.config().encoderConfig(asIs)).contentType(TYPE).body(body);
    for (int i = 0; i < headers.length; i += 2) {
      request.header(headers[i], headers[i + 1]);
    }
    return request.post(address).then();
  }

  private static List<String> lines(byte[] body, String... headers) {
    var answer = stream(STREAM, body, headers).statusCode(200).contentType(TYPE);
    return answer.extract().asString().lines().toList();
  }

  private static List<String> lines(String body) {
    return lines(body.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void line_by_line_the_answers_are_those_of_post() {
    var sent = List.of(kilograms(3), kilograms(1), kilograms(2));
    var answers = lines(String.join("\n", sent));
    assertThat(answers).hasSize(3);
    for (int i = 0; i < sent.size(); i++) {
      var alone = served.json(sent.get(i)).post("/v1/calculations/conversion").asString();
      assertThat(answers.get(i)).isEqualTo(alone);
    }
  }

  @Test
  void a_line_end_of_two_characters_and_one_at_the_end_make_no_difference() {
    assertThat(lines(kilograms(3) + "\r\n" + kilograms(1) + "\r\n"))
        .isEqualTo(lines(kilograms(3) + "\n" + kilograms(1)));
  }

  @Test
  void ten_thousand_lines_keep_their_order() {
    var body = new StringBuilder();
    for (int i = 1; i <= 10_000; i++) {
      body.append(kilograms(i)).append('\n');
    }
    var answers = lines(body.toString());
    assertThat(answers).hasSize(10_000);
    for (int i = 1; i <= 10_000; i++) {
      assertThat(answers.get(i - 1)).contains("\"amount\":" + i * 1000 + ",");
    }
  }

  @Test
  void a_bad_line_in_the_middle_is_a_problem_on_its_line_and_the_rest_is_answered() {
    var answers = lines(kilograms(1) + "\n{\"quantity\":\"1 kg\"\n" + kilograms(2) + "\n");
    assertThat(answers).hasSize(3);
    assertThat(answers.get(0)).contains("\"amount\":1000");
    assertThat(answers.get(1)).startsWith("{\"line\":2,\"problem\":{").contains("not-json", "400");
    assertThat(answers.get(2)).contains("\"amount\":2000");
  }

  @Test
  void all_faults_of_a_line_are_told() {
    assertThat(lines("{\"quantity\":\"1 spoonfull\",\"unit\":\"gg\",\"colour\":1}").get(0))
        .startsWith("{\"line\":1,\"problem\":{")
        .contains("\"status\":422", "/quantity", "/unit", "/colour");
  }

  @Test
  void blank_lines_are_counted_and_not_answered() {
    var answers = lines("\n  \t\r\n" + kilograms(1) + "\n\nnonsense\n\n");
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).contains("\"amount\":1000");
    assertThat(answers.get(1)).startsWith("{\"line\":5,");
  }

  @Test
  void nothing_is_answered_to_nothing() {
    assertThat(lines("")).isEmpty();
    assertThat(lines("\n\n\n")).isEmpty();
  }

  @Test
  void a_line_that_is_too_long_is_one_problem_and_the_next_is_answered() {
    var longest = kilograms(1) + " ".repeat(LINE_BYTES - kilograms(1).length());
    var answers = lines(longest + "\n" + longest + " \n" + kilograms(2));
    assertThat(answers).hasSize(3);
    assertThat(answers.get(0)).contains("\"amount\":1000");
    assertThat(answers.get(1))
        .startsWith("{\"line\":2,\"problem\":{")
        .contains("too-large", "413", "10000 bytes");
    assertThat(answers.get(2)).contains("\"amount\":2000");
  }

  @Test
  void a_line_that_is_no_utf_8_is_one_problem() {
    var body = new ByteArrayOutputStream();
    body.writeBytes("{\"quantity\":\"1 k".getBytes(StandardCharsets.UTF_8));
    body.write(0xE9);
    body.writeBytes(("\"}\n" + kilograms(2)).getBytes(StandardCharsets.UTF_8));
    var answers = lines(body.toByteArray());
    assertThat(answers).hasSize(2);
    assertThat(answers.get(0)).startsWith("{\"line\":1,").contains("not-utf8");
    assertThat(answers.get(1)).contains("\"amount\":2000");
  }

  @Test
  void a_comma_number_is_told_on_its_line() {
    assertThat(lines("{\"quantity\":\"2,25 kg\",\"unit\":\"g\"}").get(0)).contains("stray-comma");
  }

  @Test
  void the_query_says_how_every_line_is_answered() {
    var body = (kilograms(1) + "\n" + kilograms(2)).getBytes(StandardCharsets.UTF_8);
    var answers =
        stream(STREAM + "?sources=no&pick=/amount&k=7", body).extract().asString().lines().toList();
    assertThat(answers.get(0)).contains("\"picked\":1000").doesNotContain("\"sources\"");
    assertThat(answers.get(1)).contains("\"picked\":2000");
  }

  @Test
  void stored_formulas_are_found() {
    var body = "{\"formula\":\"plain-cream\",\"to\":{\"factor\":2}}\n{\"formula\":\"no-such\"}";
    var answers =
        stream("/v1/calculations/scaling/stream", body.getBytes(StandardCharsets.UTF_8))
            .extract()
            .asString()
            .lines()
            .toList();
    assertThat(answers.get(0)).contains("\"grams\":2000");
    assertThat(answers.get(1)).startsWith("{\"line\":2,").contains("unknown-formula");
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "?format=csv,                 422, JSON",
    "?format=no-such,             406, format",
    "?colour=red,                 422, colour",
    "?sources=perhaps&pick=x,     422, pick",
    "?k=%ff,                      400, UTF-8",
  })
  void a_query_that_cannot_be_meant_is_a_problem_of_the_whole(
      String query, int status, String told) {
    stream(STREAM + query, kilograms(1).getBytes(StandardCharsets.UTF_8))
        .statusCode(status)
        .contentType("application/problem+json")
        .body("detail", containsString(told));
  }

  @Test
  void what_is_no_calculation_is_404_and_names_the_nearest() {
    stream("/v1/calculations/convertion/stream", new byte[0])
        .statusCode(404)
        .body("detail", containsString("conversion"));
  }

  @Test
  void a_body_of_another_type_is_415_and_the_wanted_one_is_named() {
    served.json("{}").post(STREAM).then().statusCode(415).body("faults[0].allowed", is(TYPE));
    stream(STREAM, new byte[0], "Content-Encoding", "br").statusCode(415);
  }

  @Test
  void an_answer_of_another_type_is_406() {
    stream(STREAM, new byte[0], "Accept", "text/csv").statusCode(406);
    stream(STREAM, new byte[0], "Accept", "application/json").statusCode(200);
  }

  // -- compressed ---------------------------------------------------------------------------------

  private static byte[] squeezed(String text) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var out = new GZIPOutputStream(bytes)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toByteArray();
  }

  @Test
  void a_compressed_body_is_read() throws IOException {
    var text = kilograms(1) + "\n" + kilograms(2);
    assertThat(lines(squeezed(text), "Content-Encoding", "gzip")).isEqualTo(lines(text));
  }

  @Test
  void a_compressed_body_that_was_cut_off_is_answered_as_far_as_it_goes() throws IOException {
    var text = new StringBuilder();
    for (int i = 1; i <= 500; i++) {
      text.append(kilograms(i)).append('\n');
    }
    var whole = squeezed(text.toString());
    var answers = lines(Arrays.copyOf(whole, whole.length / 2), "Content-Encoding", "gzip");
    assertThat(answers).hasSizeBetween(10, 490);
    int last = answers.size();
    assertThat(answers.get(last - 1))
        .startsWith("{\"line\":" + last + ",\"problem\":{")
        .contains("did not come whole");
    assertThat(answers.subList(0, last - 1)).allMatch(line -> line.contains("\"amount\":"));
  }

  @Test
  void what_is_not_compressed_though_it_is_said_to_be_is_a_problem_on_line_1() {
    var answers = lines(kilograms(1).getBytes(StandardCharsets.UTF_8), "Content-Encoding", "gzip");
    assertThat(answers).hasSize(1);
    assertThat(answers.get(0)).startsWith("{\"line\":1,").contains("did not come whole");
  }
}
