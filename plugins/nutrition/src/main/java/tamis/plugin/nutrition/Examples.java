package tamis.plugin.nutrition;

import java.util.List;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;

/** Formulas to try the calculations with; they need nothing stored. */
final class Examples {
  private Examples() {}

  /** Scones with sultanas that lose a tenth of their mass in the oven. */
  static FormulaRef scones() {
    return FormulaRef.of(
        new Formula(
            "scones-example",
            "Sultana scones",
            Measures.METRIC,
            List.of(
                line("all-purpose-flour", "500 g"),
                line("butter-unsalted", "100 g"),
                line("sugar-granulated", "60 g"),
                line("baking-powder", "25 g"),
                line("salt", "4 g"),
                line("milk-whole", "280 g"),
                line("sultana", "120 g"),
                line("egg", "as needed")),
            new Yield(12.0, null, null, null, new Fraction(0.1), null, List.of(), null, null),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            null,
            null));
  }

  private static Line line(String ingredient, String quantity) {
    return new Line(
        IngredientRef.parse(ingredient),
        null,
        Quantity.parse(quantity),
        null,
        null,
        null,
        null,
        null,
        null);
  }
}
