package tamis.plugin.nutrition;

import java.util.List;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Yield;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Measures;

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
                Line.of("all-purpose-flour", "500 g"),
                Line.of("butter-unsalted", "100 g"),
                Line.of("sugar-granulated", "60 g"),
                Line.of("baking-powder", "25 g"),
                Line.of("salt", "4 g"),
                Line.of("milk-whole", "280 g"),
                Line.of("sultana", "120 g"),
                Line.of("egg", "as needed")),
            new Yield(12.0, null, null, null, new Fraction(0.1), null, List.of(), null, null),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            null,
            null));
  }
}
