package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Kitchen;

/** A shelf of formulas and documents for the tests, written as a caller writes them. */
final class Bakery {
  private final List<Formula> formulas = new ArrayList<>();
  private final List<Ingredient> ingredients = new ArrayList<>();

  /**
   * {@code "all-purpose-flour 500 g"}; a formula is named with {@code =}: {@code "=glaze 60 g"}.
   */
  static Map<String, Object> formula(String id, Map<String, ?> yield, String... lines) {
    List<Map<String, Object>> list = new ArrayList<>();
    for (String line : lines) {
      int space = line.indexOf(' ');
      Map<String, Object> one = new LinkedHashMap<>();
      boolean part = line.startsWith("=");
      one.put(part ? "formula" : "ingredient", line.substring(part ? 1 : 0, space));
      String[] rest = line.substring(space + 1).split(" remains ");
      one.put("quantity", rest[0]);
      if (rest.length > 1) {
        one.put("remains", rest[1]);
      }
      list.add(one);
    }
    Map<String, Object> formula = new LinkedHashMap<>();
    formula.put("id", id);
    formula.put("measures", "metric");
    formula.put("lines", list);
    if (!yield.isEmpty()) {
      formula.put("yield", yield);
    }
    return formula;
  }

  Bakery with(Map<String, ?> formula) {
    formulas.add(reader().read(Formula.class, formula));
    return this;
  }

  Bakery withIngredient(Map<String, ?> ingredient) {
    ingredients.add(reader().read(Ingredient.class, ingredient));
    return this;
  }

  Kitchen open() {
    return new Pantry(
        Shelf.of(formulas, ingredients), Pantry.Fittings.of(List.of(new NutritionPlugin())));
  }

  private static RecordReader reader() {
    return new RecordReader(References.UNCHECKED, Limits.usual());
  }
}
