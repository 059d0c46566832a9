package tamis.plugin.orders;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.StockItem;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.Price;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;

/** Orders to try the calculation with; they need nothing stored. */
final class ProductionExamples {
  private ProductionExamples() {}

  static List<Production.Input> all() {
    FormulaRef custard = formula("custard-example", 4, "egg-yolk", "6 each", "milk-whole", "500 g");
    FormulaRef foam = formula("foam-example", 8, "egg-white", "4 each", "sugar-superfine", "250 g");
    return List.of(
        new Production.Input(
            List.of(order(custard, 10, 2), order(foam, 12, 3)),
            null,
            LocalDateTime.parse("2026-05-01T05:00"),
            List.of(
                new Capacity("mixer", "small bowl", null, Mass.ofGrams(700), null, null, null),
                new Capacity(
                    "mixer",
                    "large bowl",
                    Mass.ofGrams(600),
                    Mass.ofGrams(1500),
                    null,
                    null,
                    null)),
            true,
            List.of(new StockItem(IngredientRef.parse("milk-whole"), null, Quantity.parse("1 l"))),
            List.of(
                price("egg", "180 each", "43.20 EUR"),
                price("milk-whole", "10 l", "10.90 EUR"),
                price("sugar-superfine", "10 kg", "14.20 EUR")),
            null,
            Map.of(),
            null,
            null,
            List.of(),
            null,
            List.of(),
            null));
  }

  private static OrderLine order(FormulaRef formula, double portions, int count) {
    return new OrderLine(formula, portions, null, null, List.of(), count, null);
  }

  private static Price price(String item, String pack, String price) {
    return new Price(item, Quantity.parse(pack), Money.parse(price), null, null);
  }

  private static FormulaRef formula(
      String id, double portions, String first, String much, String second, String more) {
    return FormulaRef.of(
        new Formula(
            id,
            null,
            Measures.METRIC,
            List.of(Line.of(first, much), Line.of(second, more)),
            new Yield(
                portions, null, null, null, null, null, List.of(), null, Density.parse("0.6 g/ml")),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            null,
            null));
  }
}
