package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;

/**
 * Turns a quantity of an ingredient into grams and back: by mass, by density of the state and
 * measure, or by the mass of a piece. A volume never becomes a mass without a density row.
 *
 * @param measures whose measures are meant; null: US is taken, and a remark says so
 * @param at pointer of the quantity in the input, for remarks and faults
 * @param cited pointer of the figure in the result, for sources
 */
public record Weighing(@Nullable Measures measures, String at, String cited, Notes notes) {

  /**
   * Grams of a measured quantity.
   *
   * @throws Refusal {@code no-density}, {@code no-piece-mass}, {@code unknown-state}, {@code
   *     wrong-dimension}, {@code no-size} for percent and as needed; pointers are relative
   */
  public Spread grams(Quantity quantity, Ingredient ingredient, @Nullable String state) {
    if (!quantity.isMeasured()) {
      throw refused(
          FaultCode.NO_SIZE,
          quantity.text(),
          "a mass, a volume or a count",
          quantity.text() + " is no amount by itself");
    }
    if (quantity.isRange()) {
      notes.estimate(
          "range", at, "`" + quantity.text() + "` is a range; the middle is worked with");
    }
    Spread perUnit = gramsPerUnit(quantity.unit(), ingredient, state);
    double share = quantity.amount();
    return new Spread(
        perUnit.low() * quantity.low(),
        perUnit.typical() * share,
        perUnit.high() * quantity.high());
  }

  /** Says what is taken for granted when the ingredient goes by this name: butter is unsalted. */
  public void remarkOnName(IngredientRef reference, String pointer) {
    @Nullable String assumed = ReferenceIngredients.standard().assumed(reference);
    if (assumed != null) {
      notes.remark("name-assumed", pointer, "`" + reference.name() + "`: " + assumed);
    }
  }

  /**
   * Grams of one of a unit.
   *
   * @throws Refusal as {@link #grams}
   */
  public Spread gramsPerUnit(String unitName, Ingredient ingredient, @Nullable String state) {
    Unit unit = unit(unitName);
    if (unit.imprecise()) {
      notes.estimate(
          "imprecise-measure",
          at,
          "a " + unit.symbol() + " is no exact measure; no two hands agree");
    }
    Dimension dimension = unit.dimension();
    if (dimension == Dimension.MASS) {
      return Spread.exactly(unit.factor());
    }
    if (dimension == Dimension.VOLUME) {
      return new ByVolume(at, cited, notes).grams(unit, ingredient, state);
    }
    if (dimension == Dimension.COUNT || dimension == Dimension.PIECE) {
      String piece = dimension == Dimension.COUNT ? PieceMass.EACH : unit.symbol();
      return new ByPiece(at, cited, notes).grams(piece, ingredient, state).times(unit.factor());
    }
    throw refused(
        FaultCode.WRONG_DIMENSION,
        unit.symbol(),
        "a mass, a volume or a count",
        "a " + dimension + " of an ingredient cannot be weighed");
  }

  /** The unit of this name by the measures that are meant; says so if they were assumed. */
  public Unit unit(String name) {
    if (measures != null) {
      return Units.standard().unit(name, measures);
    }
    if (Units.standard().dependsOnMeasures(name)) {
      notes.remark(
          "measure-assumed",
          at,
          "`" + name + "` is taken as the US measure; say `measures` for another");
    }
    return Units.standard().unit(name, Measures.US);
  }

  static Refusal refused(FaultCode code, String given, String allowed, String message) {
    return new Refusal(new Fault(code, "", given, allowed, message));
  }
}
