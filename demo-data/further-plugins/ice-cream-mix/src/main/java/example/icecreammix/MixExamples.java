package example.icecreammix;

import java.util.List;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Temperature;

/** A dairy mix, and a custard from a formula. */
final class MixExamples {
  private MixExamples() {}

  static List<IceCreamMix.Input> all() {
    return List.of(
        new IceCreamMix.Input(
            List.of(
                portion("milk-whole", 580),
                portion("cream-heavy", 220),
                portion("sugar-granulated", 160),
                portion("milk-powder-skim", 40)),
            null,
            null,
            null,
            null),
        new IceCreamMix.Input(
            List.of(),
            FormulaRef.of(custard()),
            To.ofMass(Mass.ofKilograms(2)),
            Temperature.ofCelsius(-14),
            IceCreamMix.Style.GELATO));
  }

  private static Formula custard() {
    return Formula.of(
        "custard-ice-cream",
        Measures.METRIC,
        Line.of("milk-whole", "500 g"),
        Line.of("cream-heavy", "250 g"),
        Line.of("egg-yolk", "80 g"),
        Line.of("sugar-granulated", "150 g"),
        Line.of("milk-powder-skim", "20 g"));
  }

  private static IceCreamMix.Portion portion(String ingredient, double grams) {
    return new IceCreamMix.Portion(IngredientRef.parse(ingredient), Mass.ofGrams(grams));
  }
}
