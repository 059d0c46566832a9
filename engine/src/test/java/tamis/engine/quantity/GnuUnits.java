package tamis.engine.quantity;

import java.util.Locale;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.aggregator.ArgumentsAggregator;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.note.Notes;

/**
 * One row of gnu-units.csv: what we convert, how GNU units is asked for the same, and what its
 * version 2.22 with definitions 3.15 (September 2022) printed.
 *
 * @param tolerance relative; rounding for units, a wide one for foods, which no two weigh alike
 */
record GnuUnits(
    String quantity,
    String unit,
    Measures measures,
    String from,
    String to,
    double printed,
    double tolerance,
    String ingredient,
    String state) {

  /** Our own answer. */
  double ours() throws Refusal {
    Quantity read = Quantity.parse(quantity);
    if (ingredient != null) {
      Pantry pantry = new Pantry(Shelf.empty(), Pantry.Fittings.of(java.util.List.of()));
      Ingredient food = pantry.ingredient(IngredientRef.parse(ingredient));
      return new Weighing(measures, "", "", new Notes()).grams(read, food, state).typical();
    }
    Unit source = Units.standard().unit(read.unit(), measures);
    return Units.standard().unit(unit, measures).fromCanonical(source.toCanonical(read.amount()));
  }

  /** How far ours may be from theirs; at zero the units of temperatures need some room. */
  double room(double theirs) {
    return Math.max(1e-9, Math.abs(theirs) * tolerance);
  }

  /** Reads a row. */
  static final class Reader implements ArgumentsAggregator {
    @Override
    public GnuUnits aggregateArguments(ArgumentsAccessor row, ParameterContext context) {
      String measures = row.getString(2);
      return new GnuUnits(
          row.getString(0),
          row.getString(1),
          measures == null ? Measures.US : Measures.valueOf(measures.toUpperCase(Locale.ROOT)),
          row.getString(3),
          row.getString(4),
          row.getDouble(5),
          row.getDouble(6),
          row.getString(7),
          row.getString(8));
    }
  }
}
