package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tamis.engine.spi.Answer;

class AnswersTest {
  private static final Weighing WEIGHING = new Weighing();

  private static Body body(Format format) {
    return Answers.body(WEIGHING, Answer.of(WeighingResults.usual()), 7, format, Options.none());
  }

  private static String text(Format format) {
    return new String(body(format).bytes(), UTF_8);
  }

  @Test
  void each_form_has_its_body_and_type() {
    assertThat(body(Format.JSON).contentType()).isEqualTo("application/json");
    assertThat(text(Format.JSON))
        .startsWith("{\"calculation\":\"weighing\"")
        .endsWith("\"revision\":7}");
    assertThat(body(Format.CSV).contentType()).isEqualTo("text/csv; charset=utf-8");
    assertThat(text(Format.CSV)).startsWith("ingredient,");
    assertThat(body(Format.TEXT).contentType()).isEqualTo("text/plain; charset=utf-8");
    assertThat(text(Format.TEXT)).isEqualTo("2.5");
  }

  @Test
  void renderings_of_the_calculation_are_given() {
    Format svg = Format.rendering("image/svg+xml");

    assertThat(body(svg).contentType()).isEqualTo("image/svg+xml; charset=utf-8");
    assertThat(text(svg)).isEqualTo("<svg><text>2.5</text></svg>");
    assertThat(Refused.at(() -> text(Format.rendering("text/calendar"))))
        .containsExactly("unacceptable ");
  }
}
