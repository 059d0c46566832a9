package tamis.plugin.intake;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.word.Language;

/**
 * Reads what a baker has collected into a formula. Every line of the source is in {@code lines}, in
 * {@code passages} or in {@code unresolved}; what is not told for certain is not guessed. The
 * grammar and its words are our own, from the trade (tables {@code words} and {@code
 * names-by-place}); amounts and foods are the engine's.
 */
public final class Intake implements Calculation<Intake.Input, Intake.Result> {
  /** Code of the remark that a part of the source could not be read; the others were. */
  static final String PART_BROKEN = "part-broken";

  static final int LONGEST = 1_000_000;

  /** A source, and how it is to be read. */
  @ExactlyOne({"text", "jsonld", "csv", "html"})
  public record Input(
      @Described(
              value = "Plain text: title, lines of ingredients, steps, in any order",
              example = "2 1/4 cups all-purpose flour, sifted",
              most = LONGEST)
          @Nullable String text,
      @Described(
              "A Recipe of schema.org as JSON-LD, or a formula: an object, a list, a graph, or their text")
          @Nullable Object jsonld,
      @Described(
              value = "A table with named columns: ingredient, quantity, unit … or line",
              most = LONGEST)
          @Nullable String csv,
      @Described(value = "A page of the web", most = LONGEST) @Nullable String html,
      @Described("Whose cup, tablespoon and pint is meant") @Nullable Measures measures,
      @Described(
              "Language of the source, with its place if words differ by place; told by its words if left out")
          @Nullable Language language,
      @Described(value = "Which recipe of a source with several, from 1", atLeast = "1")
          @Nullable Integer recipe,
      @Described("In which quantities the formula is written; as the source has them if left out")
          @Nullable Quantities quantities,
      @Described("How much to make; as written if left out") @Nullable To to,
      @Described(value = "What is read in place of lines", optional = true, most = 5_000)
          List<Correction> corrections) {}

  /** What was read. */
  public record Result(
      @Described("The formula, as it can be scaled; left out if no line could be read")
          @Nullable Formula formula,
      @Described(value = "Lines of ingredients as they were read", table = true)
          List<IntakeLine> lines,
      @Described("Lines that somebody must look at") List<Unresolved> unresolved,
      @Described("All other lines of the source") List<Passage> passages,
      @Described("Language that the source was read in") String language,
      @Described(value = "Lines of ingredients that are in the formula", headline = true)
          int understood,
      @Described("Recipes in the source") int recipes) {}

  @Override
  public String name() {
    return "intake";
  }

  @Override
  public String title() {
    return "A recipe of a collection as a formula, line by line, nothing guessed and nothing dropped";
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
    return IntakeExamples.all();
  }

  @Override
  public Map<String, Function<Answer<Result>, String>> renderings() {
    return Map.of("application/ld+json", answer -> RecipeJson.of(answer.result()));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Source source = Sources.of(input, kitchen, notes);
    Reading reading = Reading.of(source, input, kitchen, notes);
    return Answer.of(reading.result(), notes);
  }
}
