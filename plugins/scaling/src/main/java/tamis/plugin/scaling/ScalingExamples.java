package tamis.plugin.scaling;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;

/** A shortbread to try the calculation with; it needs nothing stored. */
final class ScalingExamples {
  private ScalingExamples() {}

  static List<Scaling.Input> all() {
    Formula shortbread =
        new Formula(
            "shortbread-example",
            "Shortbread",
            Measures.US,
            List.of(
                line("butter-unsalted", "2 stick", "softened"),
                line("sugar-granulated", "1/2 cup", null),
                line("all-purpose-flour", "2 cup", null),
                line("salt", "1/4 tsp", null)),
            new Yield(16.0, null, null, null, null, null, List.of(), null, null),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            null,
            null);
    FormulaRef formula = FormulaRef.of(shortbread);
    return List.of(
        new Scaling.Input(formula, To.ofFactor(2.5), null, null, null),
        new Scaling.Input(formula, To.ofMass(Mass.ofKilograms(3)), null, null, null));
  }

  private static Line line(String ingredient, String quantity, @Nullable String state) {
    return new Line(
        IngredientRef.parse(ingredient),
        null,
        Quantity.parse(quantity),
        state,
        null,
        null,
        null,
        null,
        null);
  }
}
