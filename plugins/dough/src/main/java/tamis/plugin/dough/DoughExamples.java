package tamis.plugin.dough;

import java.util.List;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Role;
import tamis.engine.formula.To;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;

/** Doughs to try the calculations with; they need nothing stored. */
final class DoughExamples {
  private DoughExamples() {}

  static List<BakersPercentage.Input> percentages() {
    Formula tin =
        Formula.of(
            "tin-bread-example",
            Measures.METRIC,
            Line.of("bread-flour", "100 %"),
            Line.of("water", "62 %"),
            Line.of("salt", "2 %"),
            Line.of("yeast-instant", "1 %"));
    Formula poolish =
        Formula.of(
            "poolish-example",
            Measures.METRIC,
            Line.of("bread-flour", "300 g"),
            Line.of("water", "300 g"),
            Line.of("yeast-instant", "0.3 g"));
    Formula bread =
        Formula.of(
            "poolish-bread-example",
            Measures.METRIC,
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
            Line.of("bread-flour", "700 g"),
            Line.of("water", "380 g"),
            Line.of("salt", "2 %"));
    return List.of(
        new BakersPercentage.Input(FormulaRef.of(tin), To.ofMass(Mass.ofKilograms(33))),
        new BakersPercentage.Input(FormulaRef.of(bread), null));
  }
}
