package tamis.plugin.equivalents;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/**
 * One form of an ingredient in place of another: fresh and dried yeast, leaf and powder gelatine,
 * shell and dried egg, milk and its powder. The proportions stand in the plugin's tables, those of
 * dried goods by equal solids.
 */
public final class Equivalents implements Calculation<Equivalents.Input, Equivalents.Result> {

  /** What is replaced, and by what. */
  public record Input(
      @Described(value = "How much is replaced, with its unit", example = "42 g") Quantity quantity,
      @Described(value = "Id or name of what is replaced", example = "yeast-fresh")
          IngredientRef ingredient,
      @Described(value = "State in which it is measured; of gelatine leaf its grade", most = 60)
          @Nullable String state,
      @Described(
              value = "Strength of gelatine that is replaced, as its pack tells it",
              unit = "bloom",
              atLeast = "50",
              atMost = "350",
              example = "200")
          @Nullable Double bloom,
      @Described(value = "Id or name of what takes its place", example = "yeast-instant")
          IngredientRef into,
      @Described(
              value = "Grade of gelatine leaf that takes its place",
              most = 60,
              example = "silver")
          @Nullable String intoState,
      @Described(
              value = "Strength of gelatine that takes its place, as its pack tells it",
              unit = "bloom",
              atLeast = "50",
              atMost = "350",
              example = "225")
          @Nullable Double intoBloom,
      @Described("Whose cup, tablespoon, pint and fluid ounce is meant; US if left out")
          @Nullable Measures measures) {
    public Input {
      if (!quantity.isMeasured()) {
        throw new Refusal(
            new Fault(
                FaultCode.WRONG_DIMENSION,
                "/quantity",
                quantity.text(),
                "a mass, a volume or a count",
                "`" + quantity.text() + "` is no amount that something can take the place of"));
      }
    }
  }

  /** What to weigh in its place. */
  public record Result(
      @Described("Id of what is replaced") String from,
      @Described(value = "What is replaced", unit = "g") double fromGrams,
      @Described("Id of what takes its place") String into,
      @Described(value = "The least that is in use", unit = "g") double gramsLow,
      @Described(value = "To weigh", unit = "g", headline = true) double grams,
      @Described(value = "The most that is in use", unit = "g") double gramsHigh,
      @Described("The same in pieces, for what is counted: leaves, eggs") @Nullable Double pieces,
      @Described("What else is added or left out") List<AlsoAdd> alsoAdd) {}

  @Override
  public String name() {
    return "equivalents";
  }

  @Override
  public String title() {
    return "One form of an ingredient in place of another";
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
    return List.of(
        example("42 g", "yeast-fresh", "yeast-instant"),
        example("20 g", "gelatine-leaf", "gelatine-powder"),
        example("3 each", "egg", "egg-powder"),
        example("500 g", "milk-whole", "milk-powder-whole"));
  }

  private static Input example(String quantity, String ingredient, String into) {
    return new Input(
        Quantity.parse(quantity),
        IngredientRef.parse(ingredient),
        null,
        null,
        IngredientRef.parse(into),
        null,
        null,
        Measures.METRIC);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Ingredient from = kitchen.ingredient(input.ingredient());
    Ingredient into = kitchen.ingredient(input.into());
    boolean gelatine = Gelatine.is(from.id()) && Gelatine.is(into.id());
    if (!gelatine) {
      Gelatine.refuseIn(input);
    }
    Spread given = given(input, from, notes);
    if (gelatine && !same(input, from, into)) {
      return answer(
          input,
          from,
          into,
          given,
          new Gelatine(input, notes).perGram(from, into),
          List.of(),
          notes);
    }
    if (!from.id().equals(into.id()) && Pair.food(from.id()).equals(Pair.food(into.id()))) {
      return sizes(input, from, into, given, notes);
    }
    @Nullable Pair pair = Pair.between(Pair.food(from.id()), Pair.food(into.id()));
    if (pair == null) {
      throw KnownForms.refusal(from, into);
    }
    notes.cite(pair.row(), "/grams");
    remark(pair, notes);
    List<AlsoAdd> also = pair.with(given.typical(), notes);
    return answer(input, from, into, given, pair.perGram(), also, notes);
  }

  private static boolean same(Input input, Ingredient from, Ingredient into) {
    return from.id().equals(into.id())
        && input.state() == null
        && input.intoState() == null
        && input.bloom() == null
        && input.intoBloom() == null;
  }

  private static Spread given(Input input, Ingredient from, Notes notes) {
    try {
      return new Weighing(input.measures(), "/quantity", "/fromGrams", notes)
          .grams(input.quantity(), from, input.state());
    } catch (Refusal refusal) {
      throw refusal.under("/quantity");
    }
  }

  /** Eggs of another size: the same mass, another count. */
  private static Answer<Result> sizes(
      Input input, Ingredient from, Ingredient into, Spread given, Notes notes) {
    for (Ingredient egg : List.of(from, into)) {
      @Nullable Row row = IngredientTables.EGGS.row(egg.id());
      if (row != null) {
        notes.cite(row, "/grams");
      }
    }
    return answer(input, from, into, given, Spread.exactly(1), List.of(), notes);
  }

  private static void remark(Pair pair, Notes notes) {
    @Nullable String note = pair.note();
    if (note != null) {
      notes.remark("what-changes", "/into", note);
    }
    if (pair.isPractice()) {
      notes.estimate(
          "common-practice",
          "/into",
          "the proportion is common practice, and makers differ: the pack's own word goes first");
    }
  }

  private static Answer<Result> answer(
      Input input,
      Ingredient from,
      Ingredient into,
      Spread given,
      Spread perGram,
      List<AlsoAdd> also,
      Notes notes) {
    Spread grams = given.times(perGram);
    return Answer.of(
        new Result(
            from.id(),
            given.typical(),
            into.id(),
            grams.low(),
            grams.typical(),
            grams.high(),
            pieces(input, into, grams.typical(), notes),
            also),
        notes);
  }

  private static @Nullable Double pieces(Input input, Ingredient into, double grams, Notes notes) {
    if (into.pieceMass() == null) {
      return null;
    }
    if (input.intoState() == null) {
      return grams / into.pieceMass().grams();
    }
    Weighing weighing = new Weighing(Measures.METRIC, "/intoState", "/pieces", notes);
    return grams / weighing.gramsPerUnit("leaf", into, input.intoState()).typical();
  }
}
