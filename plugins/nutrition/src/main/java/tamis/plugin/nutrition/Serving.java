package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;
import tamis.engine.table.Row;

/**
 * A serving by the amount customarily eaten. Of things that come in units: up to half of that
 * amount the number of units nearest to it, from 67 % to 200 % one unit, above it the fraction
 * nearest to it; between 50 % and 67 % one or two units may be chosen, and the nearer is taken.
 */
public record Serving(
    @Described(value = "Category of the table", example = "scones") String category,
    @Described(value = "Amount customarily eaten", unit = "g") double referenceGrams,
    @Described(value = "Mass of the serving", unit = "g") double grams,
    @Described("Units in a serving, if the product comes in units") @Nullable Double units,
    @Described("Whether two columns are wanted: a unit of 200 % to 300 % of the amount")
        boolean twoColumns) {
  private static final double HALF = 0.5;
  private static final double TWICE = 2;
  private static final double THRICE = 3;

  /**
   * @param unitGrams mass of a unit, or null if it has none
   * @param gramsPerMillilitre of the finished product, for amounts in spoons and cups
   * @return null if the amount is in spoons and no density is known
   */
  static @Nullable Serving of(
      Row row, @Nullable Double unitGrams, @Nullable Double gramsPerMillilitre) {
    @Nullable Double grams = row.numberOrNull("grams");
    @Nullable Double millilitres = row.numberOrNull("millilitres");
    if (grams == null && millilitres != null && gramsPerMillilitre != null) {
      grams = millilitres * gramsPerMillilitre;
    }
    if (grams == null) {
      return null;
    }
    String category = row.text("category");
    if (unitGrams == null) {
      return new Serving(category, grams, grams, null, false);
    }
    double part = unitGrams / grams;
    double units = units(part);
    return new Serving(category, grams, unitGrams * units, units, part >= TWICE && part <= THRICE);
  }

  private static double units(double part) {
    if (part <= HALF) {
      return Math.max(1, Math.rint(1 / part));
    }
    if (part < 0.67) {
      return Math.abs(2 * part - 1) < Math.abs(part - 1) ? 2 : 1;
    }
    return part <= THRICE ? 1 : 1 / Math.rint(part);
  }
}
