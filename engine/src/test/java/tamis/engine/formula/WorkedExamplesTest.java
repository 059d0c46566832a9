package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Units;

/** Tables of formulas with one figure each that somebody worked out. */
class WorkedExamplesTest {
  private static final double BY_HAND = 1e-9;

  @ParameterizedTest(name = "{2} of {0} ({1}) is {3}")
  @CsvFileSource(
      resources = {"percent.csv", "parts.csv"},
      delimiter = '|',
      numLinesToSkip = 1)
  void figures_worked_by_hand(
      String formulas, String to, String ask, double expected, String source) {
    assertThat(asked(ask, batch(formulas, to)))
        .as(source)
        .isEqualTo(expected, within(Math.max(1, expected) * BY_HAND));
  }

  @ParameterizedTest(name = "{2} of {0} ({1}) is {3}")
  @CsvFileSource(resources = "published.csv", delimiter = '|', numLinesToSkip = 1)
  void published_figures_of_bakers_percent(
      String formulas,
      String to,
      String ask,
      double expected,
      double tolerance,
      Double trap,
      String source) {
    double answer = asked(ask, batch(formulas, to));
    assertThat(answer).as(source).isEqualTo(expected, within(tolerance));
    if (trap != null) {
      assertThat(Math.abs(answer - trap))
          .as("printed wrongly: %s", source)
          .isGreaterThan(tolerance);
    }
  }

  private static Batch batch(String formulas, String to) {
    List<Card> cards = Card.read(formulas);
    Bench bench = Bench.with(cards.toArray(Card[]::new));
    if (to == null) {
      return bench.batch(cards.get(0).id());
    }
    Object[] named =
        Card.values(to).entrySet().stream()
            .flatMap(entry -> List.of(entry.getKey(), entry.getValue()).stream())
            .toArray();
    return bench.batch(cards.get(0).id(), named);
  }

  /** A figure of the batch by name, by the path of a line, or by an ingredient of the bill. */
  private static double asked(String ask, Batch batch) {
    String[] words = ask.split(" ");
    String name = words[words.length - 1];
    double grams =
        switch (words.length == 2 ? words[0] : "") {
          case "left" -> Bench.byProducts(batch).getOrDefault(name, 0.0);
          case "remains" -> Bench.row(batch, name).remaining().typical();
          default -> figure(name, batch);
        };
    return ask.matches("(oz|lb) .*")
        ? Units.standard().unit(words[0], Measures.US).fromCanonical(grams)
        : grams;
  }

  private static double figure(String name, Batch batch) {
    Batch.Part root = batch.root();
    return switch (name) {
      case "factor" -> batch.factor();
      case "weighed" -> root.weighed().typical();
      case "mass" -> root.mass().typical();
      case "madeUp" -> root.madeUp().typical();
      case "finished" -> root.finished().typical();
      case "flour" -> root.flour();
      default -> {
        BatchLine line = name.startsWith("/") ? Bench.line(batch, name) : null;
        yield line == null ? Bench.grams(batch, name) : line.grams().typical();
      }
    };
  }
}
