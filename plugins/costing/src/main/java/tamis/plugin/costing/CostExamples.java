package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Packaging;
import tamis.engine.formula.Stage;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.TimeSpan;

/** Batches to try the calculation with; they need nothing stored. */
final class CostExamples {
  private CostExamples() {}

  static List<Cost.Input> all() {
    Labour labour = new Labour(Money.parse("21.00 EUR"), List.of());
    return List.of(
        input(prices(), labour, 28.0, new PriceRise("butter-unsalted", 18)),
        input(prices().subList(0, 2), null, null, null));
  }

  private static Cost.Input input(
      List<GivenPrice> prices,
      @Nullable Labour labour,
      @Nullable Double target,
      @Nullable PriceRise rise) {
    return new Cost.Input(
        FormulaRef.of(shortbread()),
        null,
        prices,
        null,
        Map.<String, BigDecimal>of(),
        labour,
        null,
        target,
        null,
        null,
        null,
        rise);
  }

  private static List<GivenPrice> prices() {
    return List.of(
        price("all-purpose-flour", "25 kg", "18.50 EUR"),
        price("butter-unsalted", "10 kg", "84.00 EUR"),
        price("sugar-superfine", "10 kg", "14.20 EUR"),
        price("biscuit-tin", "20 each", "23.00 EUR"));
  }

  private static GivenPrice price(String item, String pack, String price) {
    return new GivenPrice(
        item, Quantity.parse(pack), Money.parse(price), null, null, null, "the mill");
  }

  private static Formula shortbread() {
    return new Formula(
        "shortbread-example",
        "Shortbread",
        Measures.METRIC,
        List.of(
            line("butter-unsalted", "200 g", "cream"),
            line("sugar-superfine", "100 g", "cream"),
            line("all-purpose-flour", "300 g", "rub")),
        new Yield(12.0, null, null, null, new Fraction(0.06), null, List.of(), null, null),
        List.of(
            stage("cream", "6 min", true, List.of()),
            stage("rub", "5 min", true, List.of("cream")),
            stage("bake", "35 min", false, List.of("rub"))),
        List.of(),
        List.of(new Packaging("biscuit-tin", Quantity.parse("1 each"))),
        List.of(),
        null,
        null);
  }

  private static Line line(String ingredient, String quantity, String stage) {
    return new Line(
        IngredientRef.parse(ingredient),
        null,
        Quantity.parse(quantity),
        null,
        null,
        stage,
        null,
        null,
        null);
  }

  private static Stage stage(String id, String duration, boolean hands, List<String> after) {
    return new Stage(
        id,
        null,
        null,
        TimeSpan.parse(duration),
        hands,
        null,
        null,
        after,
        List.of(),
        null,
        null,
        null);
  }
}
