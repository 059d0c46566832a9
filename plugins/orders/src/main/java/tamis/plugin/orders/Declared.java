package tamis.plugin.orders;

import java.util.List;
import tamis.engine.formula.FormulaRef;
import tamis.engine.spi.Kitchen;

/** The allergens of a formula, by the calculation that knows the regimes. */
record Declared(List<Allergen> contains, List<Allergen> mayContain) {

  static Declared of(FormulaRef formula, Regime regime, Kitchen kitchen) {
    Found found =
        Found.of(
            kitchen
                .calculate(
                    "allergens",
                    Written.map("formula", Written.either(formula), "regime", regime.toString()))
                .result());
    return new Declared(named(found.list("contains")), named(found.list("mayContain")));
  }

  private static List<Allergen> named(List<Found> allergens) {
    return allergens.stream()
        .map(
            one ->
                new Allergen(
                    one.textOr("allergen", ""), one.text("species"), one.textOr("name", "")))
        .distinct()
        .toList();
  }
}
