package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;

import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tags of answers and compressed forms. */
class ConditionalAnswersTest {
  private static final String ADDRESS =
      "/v1/calculations/conversion?quantity=1+stick&ingredient=butter-unsalted&unit=g";
  private static final String LONG = "/v1/tables/densities";

  private static String tag(Served served, String address) {
    return served.ask().get(address).header("ETag");
  }

  @Test
  void a_caller_who_has_the_answer_is_told_so() {
    try (var served = Served.usual()) {
      var tag = tag(served, ADDRESS);
      assertThat(tag).matches("\"[^\"]+\"");
      for (var condition : new String[] {tag, "W/" + tag, "\"x\", " + tag, "*"}) {
        served
            .ask()
            .header("If-None-Match", condition)
            .get(ADDRESS)
            .then()
            .statusCode(304)
            .header("ETag", is(tag))
            .header("Cache-Control", is("no-cache"))
            .header("Vary", is("Accept, Accept-Encoding, Origin"));
      }
      served.ask().header("If-None-Match", "\"x\"").get(ADDRESS).then().statusCode(200);
    }
  }

  @Test
  void the_tag_is_another_for_another_form_option_or_revision() {
    try (var served = Served.usual()) {
      var tag = tag(served, ADDRESS);
      assertThat(tag(served, ADDRESS)).isEqualTo(tag);
      assertThat(tag(served, ADDRESS + "&format=text")).isNotEqualTo(tag);
      assertThat(tag(served, ADDRESS + "&sources=no")).isNotEqualTo(tag);
      served.holding(
          "cream", "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
      assertThat(tag(served, ADDRESS)).isNotEqualTo(tag);
      served.ask().header("If-None-Match", tag).get(ADDRESS).then().statusCode(200);
    }
  }

  @Test
  void the_form_that_accept_chose_has_its_own_tag() {
    try (var served = Served.usual()) {
      var text = served.ask().header("Accept", "text/plain").get(ADDRESS);
      assertThat(text.header("ETag")).isNotEqualTo(tag(served, ADDRESS));
      assertThat(text.body().asString()).isEqualTo("113.4");
    }
  }

  @Test
  void a_fault_has_no_tag() {
    try (var served = Served.usual()) {
      assertThat(tag(served, "/v1/calculations/conversion?quantity=1&unit=g")).isNull();
    }
  }

  @Test
  void a_body_is_compressed_only_for_those_who_ask() throws IOException {
    try (var served = Served.usual()) {
      var plain = Raw.ask(served.port(), "GET", LONG);
      assertThat(plain.header("Content-Encoding")).isNull();
      assertThat(plain.header("Vary")).contains("Accept-Encoding");
      var squeezed =
          Raw.ask(served.port(), "GET", LONG, "Accept-Encoding: deflate, gzip, br, zstd");
      assertThat(squeezed.header("Content-Encoding")).isEqualTo("gzip");
      assertThat(squeezed.body().length()).isLessThan(plain.body().length() / 4);
      assertThat(served.ask().get(LONG).body().asString()).startsWith("{\"name\":\"densities\"");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"gzip;q=0", "identity", "br", "gzip; q=0.000, *;q=0", "x-gzip"})
  void whoever_does_not_take_gzip_gets_none(String accepted) throws IOException {
    try (var served = Served.usual()) {
      var answer = Raw.ask(served.port(), "GET", LONG, "Accept-Encoding: " + accepted);
      assertThat(answer.header("Content-Encoding")).isNull();
    }
  }

  @Test
  void a_compressed_answer_has_a_tag_of_its_own_and_both_are_known() throws IOException {
    var address = "/v1/calculations/scaling?formula=cream&to.factor=2";
    try (var served = Served.usual()) {
      served.holding(
          "cream",
          "{\"lines\":["
              + "{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"},".repeat(9)
              + "{\"ingredient\":\"egg\",\"quantity\":\"3 each\"}]}");
      var plain = Raw.ask(served.port(), "GET", address);
      var squeezed = Raw.ask(served.port(), "GET", address, "Accept-Encoding: gzip");
      assertThat(squeezed.header("Content-Encoding")).isEqualTo("gzip");
      assertThat(squeezed.header("ETag")).isNotEqualTo(plain.header("ETag"));
      for (var tag : new String[] {plain.header("ETag"), squeezed.header("ETag")}) {
        assertThat(Raw.ask(served.port(), "GET", address, "If-None-Match: " + tag).status())
            .isEqualTo(304);
      }
    }
  }

  @Test
  void a_document_is_never_compressed() throws IOException {
    try (var served = Served.usual()) {
      var egg = Raw.ask(served.port(), "GET", "/v1/ingredients/egg", "Accept-Encoding: gzip");
      assertThat(egg.body().length()).isGreaterThan(Gzip.squeezed(new byte[0]).length + 1_024);
      assertThat(egg.header("Content-Encoding")).isNull();
      assertThat(egg.header("ETag")).isEqualTo("\"0\"");
    }
  }

  @Test
  void without_a_cache_the_answers_are_the_same() {
    try (var served = Served.usual();
        var none = Served.with().cacheBytes(0).open()) {
      for (int i = 0; i < 2; i++) {
        assertThat(none.ask().get(ADDRESS).body().asString())
            .isEqualTo(served.ask().get(ADDRESS).body().asString());
      }
      none.ask().get(ADDRESS).then().header("Vary", containsString("Accept"));
    }
  }
}
