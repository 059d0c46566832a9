package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static tamis.plugin.intake.Sent.kitchen;
import static tamis.plugin.intake.Sent.read;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.plugin.intake.source.SourceLine;

/** What is no recipe at all: refused in words or told, in bounded time. */
class AnythingSentTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[1,2",
        "{\"@type\":",
        "null",
        "{}",
        "[]",
        "{\"a\":1e999}",
        "\"\\u12\"",
        "{\"@type\":\"Cake\"}"
      })
  void json_that_holds_no_recipe_is_refused_in_words(String jsonld) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("jsonld", jsonld));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults().get(0).pointer()).isEqualTo("/jsonld");
  }

  private static Stream<String> soups() {
    return Stream.of(
        "(".repeat(50_000),
        "1".repeat(100_000) + " cups flour",
        "1/".repeat(50_000),
        "a ".repeat(100_000),
        "1 cup ".repeat(50_000),
        "1 cup flour, ".repeat(20_000),
        "one and ".repeat(30_000),
        "yolks of ".repeat(30_000),
        "\n".repeat(200_000) + "1 cup milk",
        "1 cup milk or ".repeat(20_000),
        "2 - ".repeat(50_000),
        "½".repeat(50_000),
        "😀 cup 𝒻lour\n\u202e1 cup milk\u0000",
        "grated finely ".repeat(10) + "x",
        ("It was a dark night and two men walked along the road. ".repeat(6) + "\n").repeat(2_500),
        "two men walked in\n".repeat(2_000),
        "1 cup grated finely chopped sifted\n".repeat(2_500));
  }

  @ParameterizedTest
  @MethodSource("soups")
  void anything_is_read_in_bounded_time_and_nothing_of_it_is_lost(String soup) {
    Intake.Result result =
        assertTimeoutPreemptively(Duration.ofSeconds(60), () -> read("text", soup));
    long told =
        result.passages().size() + result.lines().stream().map(IntakeLine::line).distinct().count();
    assertThat(told).isEqualTo(SourceLine.of(soup).size());
  }

  @Test
  void deep_nesting_is_refused_or_read_but_never_breaks() {
    String deep = "[".repeat(100_000) + "]".repeat(100_000);
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("jsonld", deep));
    assertThat(refusal.faults().get(0).message()).contains("nests deeper");
    Intake.Result html = read("html", "<div>".repeat(50_000) + "1 cup milk");
    assertThat(html.lines()).hasSize(1);
  }

  @Test
  void random_words_of_the_trade_give_lines_or_passages_and_a_formula_that_can_be_made() {
    Random random = new Random(20_261_125);
    List<String> words =
        List.of(
            "1",
            "2 1/2",
            "½",
            "one",
            "a",
            "half",
            "cup",
            "tsp",
            "g",
            "oz",
            "package",
            "can",
            "(",
            ")",
            ",",
            "-",
            "or",
            "and",
            "plus",
            "of",
            "sifted",
            "melted",
            "flour",
            "butter",
            "eggs",
            "milk",
            "sugar",
            "yolks",
            "juice",
            "lemon",
            "to taste",
            "for the pan",
            "large",
            "14-oz",
            "x",
            "/",
            "%",
            "mango",
            "\n",
            "\n",
            "bake",
            "350 F",
            "30 minutes",
            "Serves 8",
            ":");
    for (int round = 0; round < 150; round++) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < 40; i++) {
        text.append(words.get(random.nextInt(words.size()))).append(' ');
      }
      Intake.Result result = read("text", text.toString(), "language", "en");
      long told =
          result.passages().size()
              + result.lines().stream().map(IntakeLine::line).distinct().count();
      assertThat(told).as(text.toString()).isEqualTo(SourceLine.of(text.toString()).size());
      if (result.formula() != null) {
        kitchen().batch(FormulaRef.of(result.formula()), null);
      }
    }
  }
}
