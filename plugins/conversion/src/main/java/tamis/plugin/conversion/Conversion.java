package tamis.plugin.conversion;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.KitchenMeasure;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.ScaleStep;
import tamis.engine.quantity.Shown;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.UnitName;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * A quantity in another unit. Within one dimension by the exact factors of the units; between mass,
 * volume and count by the densities and piece masses of an ingredient, which carry their spread.
 */
public final class Conversion implements Calculation<Conversion.Input, Conversion.Result> {

  /** What is converted, and into what. */
  public record Input(
      @Described(value = "What is converted, with its unit", example = "2 1/4 cup")
          Quantity quantity,
      @Described(
              value = "Id or name of the ingredient, where mass, volume and count meet",
              example = "all-purpose-flour")
          @Nullable IngredientRef ingredient,
      @Described(value = "State in which it is measured", example = "sifted", most = 60)
          @Nullable String state,
      @Described("Whose cup, tablespoon, pint and fluid ounce is meant; US if left out")
          @Nullable Measures measures,
      @Described(value = "The unit that is wanted", example = "g") UnitName unit,
      @Described("In whose measures `display` is written") @Nullable Shown units) {
    public Input {
      if (!quantity.isMeasured()) {
        throw new Refusal(
            new Fault(
                FaultCode.WRONG_DIMENSION,
                "/quantity",
                quantity.text(),
                "a number with a unit, for example 2 1/4 cup",
                "`" + quantity.text() + "` is no amount that can be converted by itself"));
      }
    }
  }

  /** The quantity in the unit that was wanted. */
  public record Result(
      @Described(value = "So many of the unit", headline = true) double amount,
      @Described("The unit") String unit,
      @Described("Lower end, by the spread of the density or the range that was given") double low,
      @Described("Upper end, by the spread of the density or the range that was given") double high,
      @Described("What a scale or spoon can measure") @Nullable String display) {}

  @Override
  public String name() {
    return "conversion";
  }

  @Override
  public String title() {
    return "A quantity in another unit, by mass, volume or count";
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
        example("2 1/4 cup", "all-purpose-flour", "g"),
        example("1 stick", "butter-unsalted", "g"),
        example("350 °F", null, "°C"));
  }

  private static Input example(String quantity, @Nullable String ingredient, String unit) {
    @Nullable IngredientRef named = ingredient == null ? null : IngredientRef.parse(ingredient);
    return new Input(
        Quantity.parse(quantity), named, null, Measures.US, UnitName.parse(unit), null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Weighing given = new Weighing(input.measures(), "/quantity", "/amount", notes);
    Weighing wanted = new Weighing(input.measures(), "/unit", "/amount", notes);
    Unit from = at("/quantity", () -> given.unit(input.quantity().unit()));
    Unit to = at("/unit", () -> wanted.unit(input.unit().name()));
    boolean direct = pieceless(from.dimension()) == pieceless(to.dimension()) && !pieces(from, to);
    Spread amount =
        direct
            ? direct(input.quantity(), from, to, notes)
            : byIngredient(input, kitchen, given, from, wanted, to);
    if (direct && (input.ingredient() != null || input.state() != null)) {
      notes.remark(
          "not-needed",
          input.ingredient() == null ? "/state" : "/ingredient",
          "a " + from.dimension() + " stays one, whatever it is of");
    }
    String display = display(input, amount, to);
    return Answer.of(
        new Result(amount.typical(), to.symbol(), amount.low(), amount.high(), display), notes);
  }

  /** Pieces of different kinds, say leaves and sticks, only meet over their mass. */
  private static boolean pieces(Unit from, Unit to) {
    boolean piece = from.dimension() == Dimension.PIECE || to.dimension() == Dimension.PIECE;
    return piece && !from.symbol().equals(to.symbol());
  }

  private static Dimension pieceless(Dimension dimension) {
    return dimension == Dimension.PIECE ? Dimension.COUNT : dimension;
  }

  private static Spread direct(Quantity quantity, Unit from, Unit to, Notes notes) {
    notes.cite(from.row(), "/amount");
    notes.cite(to.row(), "/amount");
    return new Spread(
        to.fromCanonical(from.toCanonical(quantity.low())),
        to.fromCanonical(from.toCanonical(quantity.amount())),
        to.fromCanonical(from.toCanonical(quantity.high())));
  }

  private static Spread byIngredient(
      Input input, Kitchen kitchen, Weighing given, Unit from, Weighing wanted, Unit to) {
    if (!weighable(from) || !weighable(to)) {
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_DIMENSION,
              "/unit",
              to.symbol(),
              "a unit of " + from.dimension(),
              "no rule makes a "
                  + to.dimension()
                  + " of a "
                  + from.dimension()
                  + "; `unit` must be one of "
                  + from.dimension()));
    }
    @Nullable IngredientRef named = input.ingredient();
    if (named == null) {
      throw new Refusal(
          new Fault(
              FaultCode.NO_DENSITY,
              "/ingredient",
              null,
              "an ingredient",
              "a "
                  + from.dimension()
                  + " becomes a "
                  + to.dimension()
                  + " only of an ingredient; say which"));
    }
    Ingredient ingredient = at("/ingredient", () -> kitchen.ingredient(named));
    given.remarkOnName(named, "/ingredient");
    Spread grams = at("/quantity", () -> given.grams(input.quantity(), ingredient, input.state()));
    if (to.dimension() == Dimension.MASS) {
      return grams.times(1 / to.factor());
    }
    Spread each =
        at("/unit", () -> wanted.gramsPerUnit(input.unit().name(), ingredient, input.state()));
    return grams.over(each);
  }

  private static boolean weighable(Unit unit) {
    return switch (unit.dimension()) {
      case MASS, VOLUME, COUNT, PIECE -> true;
      default -> false;
    };
  }

  private static <T> T at(String pointer, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      throw refusal.under(pointer);
    }
  }

  private static @Nullable String display(Input input, Spread amount, Unit to) {
    double canonical = to.toCanonical(amount.typical());
    boolean us = input.units() == Shown.US;
    return switch (to.dimension()) {
      case MASS -> us ? KitchenMeasure.poundsAndOunces(canonical) : ScaleStep.shown(canonical);
      case VOLUME ->
          us ? KitchenMeasure.cupsAndSpoons(canonical) : ScaleStep.shownVolume(canonical);
      case TEMPERATURE -> Bounds.plain(Math.rint(amount.typical())) + " " + to.symbol();
      default -> null;
    };
  }
}
