package tamis.plugin.costing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Kitchen;

/** A shelf of formulas for the tests, written as a caller writes them. */
final class Bench {
  private static final String PRICES =
      "butter-unsalted 10 kg 84.00 EUR; sugar-granulated 25 kg 27.50 EUR; egg 180 each 43.20 EUR;"
          + " all-purpose-flour 25 kg 18.50 EUR; cake-box 50 each 21.00 EUR";

  private final List<Formula> formulas = new ArrayList<>();
  private final List<Ingredient> ingredients = new ArrayList<>();
  private PriceList prices = PriceList.empty();

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  /** {@code flour 300 g @mix remains 0.4; >cream 60 g @fill}: {@code >} names a formula. */
  static Map<String, Object> formula(String id, String lines, Object... more) {
    List<Object> list = new ArrayList<>();
    for (String line : lines.split("; ")) {
      Map<String, Object> one = new LinkedHashMap<>();
      String[] remains = line.split(" remains ");
      String[] stage = remains[0].split(" @");
      String[] both = stage[0].split(" ", 2);
      boolean part = both[0].startsWith(">");
      one.put(part ? "formula" : "ingredient", part ? both[0].substring(1) : both[0]);
      one.put("quantity", both[1]);
      if (stage.length > 1) {
        one.put("stage", stage[1]);
      }
      if (remains.length > 1) {
        one.put("remains", remains[1]);
      }
      list.add(one);
    }
    Map<String, Object> formula = map("id", id, "measures", "metric", "lines", list);
    formula.putAll(map(more));
    return formula;
  }

  /** {@code apple 1 kg 11.95 EUR 88.5} or {@code … 5.2kg>4.6kg}, several with semicolons. */
  static List<Object> prices(String text) {
    List<Object> prices = new ArrayList<>();
    for (String one : text.split("; ")) {
      String[] words = one.split(" ");
      Map<String, Object> price =
          map(
              "ingredient", words[0],
              "pack", words[1] + " " + words[2],
              "price", words[3] + " " + words[4]);
      if (words.length > 5 && words[5].contains(">")) {
        price.put("purchased", words[5].split(">")[0]);
        price.put("edible", words[5].split(">")[1]);
      } else if (words.length > 5) {
        price.put("yieldPercent", Double.valueOf(words[5]));
      }
      prices.add(price);
    }
    return prices;
  }

  /** With a cream and a cake on the shelf, and the shop's prices. */
  static Kitchen shop() {
    return new Bench()
        .with(
            formula(
                "cream",
                "butter-unsalted 500 g @beat; sugar-granulated 300 g @syrup",
                "stages",
                List.of(
                    stage("syrup", 12, "hands", true),
                    stage("rest", 60, "hands", false),
                    stage("beat", 10, "hands", true, "after", List.of("syrup", "rest")))))
        .with(
            formula(
                "cake",
                "egg 6 each @foam; all-purpose-flour 200 g @fold; >cream 400 g @coat",
                "yield",
                map("portions", 12.0, "pieces", 1.0),
                "packaging",
                List.of(map("item", "cake-box", "quantity", "1 each")),
                "stages",
                List.of(
                    stage("foam", 8, "hands", true),
                    stage("fold", 4, "hands", true, "after", List.of("foam")),
                    stage("bake", 30, "hands", false, "after", List.of("fold")),
                    stage("coat", 9, "hands", true, "after", List.of("bake")))))
        .withPrices(PRICES)
        .open();
  }

  static Map<String, Object> stage(String id, double minutes, Object... more) {
    Map<String, Object> stage = map("id", id, "duration", minutes + " min");
    stage.putAll(map(more));
    return stage;
  }

  Bench with(Map<String, ?> formula) {
    formulas.add(reader().read(Formula.class, formula));
    return this;
  }

  Bench withIngredient(Map<String, ?> ingredient) {
    ingredients.add(reader().read(Ingredient.class, ingredient));
    return this;
  }

  Bench withPrices(String text) {
    prices = reader().read(PriceList.class, map("prices", prices(text)));
    return this;
  }

  Kitchen open() {
    return new Pantry(
        Shelf.of(formulas, ingredients, prices), Pantry.Fittings.of(List.of(new CostingPlugin())));
  }

  private static RecordReader reader() {
    return new RecordReader(References.UNCHECKED, Limits.usual());
  }
}
