package tamis.plugin.dough;

import java.util.List;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Role;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Quantity;

/** Doughs to try the calculations with; they need nothing stored. */
final class DoughExamples {
  private DoughExamples() {}

  static List<BakersPercentage.Input> percentages() {
    Formula tin =
        formula(
            "tin-bread-example",
            line("bread-flour", "100 %"),
            line("water", "62 %"),
            line("salt", "2 %"),
            line("yeast-instant", "1 %"));
    Formula poolish =
        formula(
            "poolish-example",
            line("bread-flour", "300 g"),
            line("water", "300 g"),
            line("yeast-instant", "0.3 g"));
    Formula bread =
        formula(
            "poolish-bread-example",
            new Line(
                null,
                FormulaRef.of(poolish),
                Quantity.parse("600.3 g"),
                null,
                null,
                null,
                Role.PREFERMENT,
                null,
                null),
            line("bread-flour", "700 g"),
            line("water", "380 g"),
            line("salt", "2 %"));
    return List.of(
        new BakersPercentage.Input(FormulaRef.of(tin), To.ofMass(Mass.ofKilograms(33))),
        new BakersPercentage.Input(FormulaRef.of(bread), null));
  }

  private static Formula formula(String id, Line... lines) {
    return new Formula(
        id,
        null,
        null,
        List.of(lines),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
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
