package tamis.api.store;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.Price;
import tamis.engine.price.PriceList;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/** Documents that stores are tested with. */
abstract class StoreSamples {
  protected static Ingredient ingredient(String id, String name) {
    return new RecordReader(References.UNCHECKED, Limits.usual())
        .read(Ingredient.class, Map.of("id", id, "names", Map.of("en", List.of(name))));
  }

  protected static PriceList prices(String butter) {
    return new PriceList(
        List.of(
            new Price(
                "butter-unsalted",
                Quantity.parse("5 kg"),
                Money.parse(butter),
                88.5,
                "the dairy")));
  }

  protected static Trial trial(String id, Observation observation) {
    return new Trial(
        id,
        FormulaRef.parse("cream@1"),
        Map.of(),
        null,
        LocalDateTime.parse("2026-04-11T08:00"),
        List.of(),
        List.of(),
        null,
        null,
        null,
        List.of(observation),
        null);
  }

  protected static Observation observation(String id, String value) {
    return new Observation(
        id,
        "syrup",
        LocalDateTime.parse("2026-04-11T08:22"),
        "temperature",
        value,
        null,
        null,
        null,
        null,
        null);
  }

  protected static Document cream(String id, String title) {
    return Document.of(formula(title, line("egg-white", null, "150 g")), id);
  }

  protected static Formula formula(String title, Line line) {
    return new Formula(
        null,
        title,
        null,
        List.of(line),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
  }

  protected static Line line(String ingredient, String formula, String quantity) {
    return new Line(
        ingredient == null ? null : IngredientRef.parse(ingredient),
        formula == null ? null : FormulaRef.parse(formula),
        Quantity.parse(quantity),
        null,
        null,
        null,
        null,
        null,
        null);
  }
}
