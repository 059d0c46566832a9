package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;

class FormatsTest {
  private static final Weighing WEIGHING = new Weighing();

  private static String chosen(String format, boolean csvEnding, String accept) {
    Options none = Options.none();
    Options options =
        new Options(format, null, false, false, null, false, false, none.sources(), null);
    return Formats.choose(options, csvEnding, accept, WEIGHING).name();
  }

  @ParameterizedTest
  @CsvSource({
    ", json",
    "'', json",
    "*/*, json",
    "application/json, json",
    "text/csv, csv",
    "text/plain, text",
    "image/svg+xml, svg",
    "text/*, csv",
    "application/*;q=0.1, json",
    "'application/json, */*;q=0.5', json",
    "'text/csv, application/json;q=0.5', csv",
    "'application/json;q=0.5, text/csv', csv",
    "'text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8', json",
    "'text/plain, text/csv', text",
    "'text/csv, text/plain', csv",
    "'*/*, text/csv', csv",
    "'*/*;q=0.9, application/json;q=0', csv",
    "'image/svg+xml, text/plain;q=0.9', svg",
    "'TEXT/CSV; charset=utf-8; header=present', csv",
    "'*', json",
  })
  void the_form_that_is_accepted_most_is_chosen(String accept, String format) {
    assertThat(chosen(null, false, accept)).isEqualTo(format);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"application/xml", "image/*;q=0", "application/json;q=0", "nonsense", ","})
  void what_cannot_be_given_is_told(String accept) {
    Fault fault = Refused.only(() -> chosen(null, false, accept));

    assertThat(fault.code()).isEqualTo(FaultCode.UNACCEPTABLE);
    assertThat(fault.allowed()).isEqualTo("application/json, text/csv, text/plain, image/svg+xml");
  }

  @Test
  void the_query_goes_before_the_ending_and_the_ending_before_the_header() {
    assertThat(chosen("text", false, "text/csv")).isEqualTo("text");
    assertThat(chosen("svg", false, null)).isEqualTo("svg");
    assertThat(chosen(null, true, "application/json")).isEqualTo("csv");
    assertThat(chosen(null, true, "application/xml")).isEqualTo("csv");
    assertThat(chosen("csv", true, "*/*")).isEqualTo("csv");
  }

  @Test
  void an_ending_and_a_query_that_want_two_forms_are_refused() {
    assertThat(Refused.at(() -> chosen("json", true, null)))
        .containsExactly("inconsistent /format");
  }

  @Test
  void an_unknown_format_is_refused_with_the_known_ones() {
    Fault fault = Refused.only(() -> chosen("pdf", false, null));

    assertThat(fault.code()).isEqualTo(FaultCode.UNACCEPTABLE);
    assertThat(fault.allowed()).isEqualTo("json, csv, text, svg");
  }

  @Test
  void text_says_its_charset_and_json_needs_none() {
    assertThat(Format.JSON.contentType()).isEqualTo("application/json");
    assertThat(Format.CSV.contentType()).isEqualTo("text/csv; charset=utf-8");
    assertThat(Format.rendering("text/calendar").name()).isEqualTo("ics");
    assertThat(Format.rendering("application/xyz").name()).isEqualTo("xyz");
  }
}
