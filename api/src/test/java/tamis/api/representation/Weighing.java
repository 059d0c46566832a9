package tamis.api.representation;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.pan.PanRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/** A calculation that has a component of every form, to read and write. */
public final class Weighing implements Calculation<Weighing.Input, Weighing.Result> {

  /** How a line came to its weight. */
  public enum How {
    ON_THE_SCALE,
    BY_THE_CUP
  }

  /** Whose units are displayed. */
  public enum Shown {
    US,
    METRIC
  }

  /** A component of every form that is read. */
  @ExactlyOne({"mass", "pieces+pieceMass"})
  public record Input(
      @Described(value = "The whole mass", moreThan = "0 g", atMost = "10 kg", example = "3 kg")
          @Nullable Mass mass,
      @Described(value = "Pieces", moreThan = "0", atMost = "100", example = "12")
          @Nullable Integer pieces,
      @Described(value = "Mass of a piece", moreThan = "0 g", example = "50 g")
          @Nullable Mass pieceMass,
      @Described(value = "The formula", example = "brioche") @Nullable FormulaRef formula,
      @Described("How much to make") @Nullable To to,
      @Described(value = "The pan", example = "round-8x2-in") @Nullable PanRef pan,
      @Described(value = "Ingredients that are named", optional = true, example = "sultana")
          List<IngredientRef> named,
      @Described(value = "Earlier lines", optional = true, most = 3) List<Line> earlier,
      @Described(value = "Shares by name", optional = true) Map<String, Fraction> shares,
      @Described(value = "Lost", example = "0.1") @Nullable Fraction loss,
      @Described(value = "Scale step", unit = "g", atLeast = "0.1", lessThan = "50")
          @Nullable Double step,
      @Described(value = "Whether dusting counts", example = "true") @Nullable Boolean dusting,
      @Described("How it is weighed") @Nullable How how,
      @Described(value = "A note", most = 40) @Nullable String note,
      @Described("Whose units are displayed") @Nullable Shown units) {}

  /** A line of the result. */
  public record Line(
      @Described(value = "The ingredient", example = "egg-white") String ingredient,
      @Described(value = "Weight", unit = "g") double grams,
      @Described(value = "Lightest", unit = "g") @Nullable Double low,
      @Described("What it costs") @Nullable Money price,
      @Described("How it was weighed") @Nullable How how,
      @Described(value = "Names on the label", optional = true) List<String> labels,
      @Described(value = "Earlier lines", optional = true) List<Line> earlier) {}

  /** A group of figures. */
  public record Portion(
      @Described(value = "Weight", unit = "g") double grams,
      @Described(value = "Weight of the fat", unit = "g") @Nullable Double fat) {}

  /** A component of every form that is written. */
  public record Result(
      @Described(value = "Times the formula", headline = true) double factor,
      @Described("What it costs") @Nullable Money price,
      @Described("What runs out first") @Nullable String limitedBy,
      @Described("A portion") @Nullable Portion portion,
      @Described("Nutrients") Map<Nutrient, Double> per100g,
      @Described(value = "Every line", table = true) List<Line> lines,
      @Described(value = "What is known in part", optional = true) List<String> incomplete) {}

  @Override
  public String name() {
    return "weighing";
  }

  @Override
  public String title() {
    return "What a formula weighs.";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return List.of(ofMass("3 kg"));
  }

  static Input ofMass(String mass) {
    return new Input(
        Mass.parse(mass),
        null,
        null,
        FormulaRef.parse("brioche"),
        null,
        null,
        List.of(),
        List.of(),
        Map.of(),
        new Fraction(0.1),
        null,
        null,
        How.BY_THE_CUP,
        null,
        null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return Answer.of(WeighingResults.usual());
  }

  @Override
  public Map<String, Function<Answer<Result>, String>> renderings() {
    return Map.of(
        "image/svg+xml", answer -> "<svg><text>" + answer.result().factor() + "</text></svg>");
  }
}
