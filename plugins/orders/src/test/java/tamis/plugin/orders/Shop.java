package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

/** A shop with formulas, prices and every plugin that the sheet calls by name. */
final class Shop {
  private static final String PRICES =
      "egg 30 each 7.20 EUR; milk-whole 10 l 10.90 EUR; sugar-granulated 25 kg 27.50 EUR;"
          + " butter-unsalted 10 kg 84.00 EUR; all-purpose-flour 25 kg 18.50 EUR;"
          + " walnut 2.5 kg 28.00 EUR; cake-box 50 each 33.50 EUR";

  private final List<Formula> formulas = new ArrayList<>();
  private PriceList prices = PriceList.empty();

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  /** {@code flour 300 g; >cream 60 g}: {@code >} names a formula. */
  static Map<String, Object> formula(String id, String lines, Object... more) {
    List<Object> list = new ArrayList<>();
    for (String line : lines.split("; ")) {
      String[] both = line.split(" ", 2);
      boolean part = both[0].startsWith(">");
      list.add(
          map(
              part ? "formula" : "ingredient",
              part ? both[0].substring(1) : both[0],
              "quantity",
              both[1]));
    }
    Map<String, Object> formula = map("id", id, "measures", "metric", "lines", list);
    formula.putAll(map(more));
    return formula;
  }

  /** {@code egg 180 each 43.20 EUR}, several with semicolons. */
  static List<Object> prices(String text) {
    List<Object> prices = new ArrayList<>();
    for (String one : text.split("; ")) {
      String[] words = one.split(" ");
      Map<String, Object> price =
          map(
              "ingredient", words[0],
              "pack", words[1] + " " + words[2],
              "price", words[3] + " " + words[4]);
      if (words.length > 5) {
        price.put("yieldPercent", Double.valueOf(words[5]));
      }
      prices.add(price);
    }
    return prices;
  }

  /** A shop that sells cakes with parts in common. */
  static Kitchen ofCakes() {
    Map<String, Object> beaten = map("kind", "cream", "low", "21 °C", "high", "24 °C");
    return new Shop()
        .with(
            "custard",
            "egg-yolk 6 each; milk-whole 500 g; sugar-granulated 120 g",
            "yield",
            map("portions", 8.0, "density", "1.05 g/ml"),
            "stages",
            List.of(map("id", "cook", "station", "stove", "duration", "10 min", "target", beaten)),
            "shelfLife",
            List.of(map("at", "4 °C", "for", "2 d")))
        .with(
            "snow",
            "egg-white 4 each; sugar-granulated 200 g",
            "yield",
            map("portions", 10.0, "pieces", 20.0))
        .with(
            "sponge",
            "egg 4 each; sugar-granulated 120 g; all-purpose-flour 120 g",
            "yield",
            map(
                "portions",
                8.0,
                "pieces",
                1.0,
                "pans",
                List.of(map("pan", "round-8x2-in", "count", 1))),
            "stages",
            List.of(
                map("id", "whip", "station", "mixer", "duration", "10 min"),
                map(
                    "id",
                    "bake",
                    "station",
                    "oven",
                    "duration",
                    "30 min",
                    "hands",
                    false,
                    "after",
                    List.of("whip"))))
        .with(
            "gateau",
            ">sponge 250 g; >custard 300 g; walnut 40 g",
            "yield",
            map("portions", 8.0, "pieces", 1.0),
            "packaging",
            List.of(map("item", "cake-box", "quantity", "1 each")))
        .with("trifle", ">custard 400 g; >sponge 100 g", "yield", map("portions", 4.0))
        .withPrices(PRICES)
        .open();
  }

  static Map<String, Object> order(String formula, String way, Object size, int count) {
    return map("formula", formula, way, size, "count", count);
  }

  Shop with(String id, String lines, Object... more) {
    formulas.add(reader().read(Formula.class, formula(id, lines, more)));
    return this;
  }

  Shop withPrices(String text) {
    prices = reader().read(PriceList.class, map("prices", prices(text)));
    return this;
  }

  Kitchen open() {
    List<Plugin> plugins =
        ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::get).toList();
    return new Pantry(Shelf.of(formulas, List.of(), prices), Pantry.Fittings.of(plugins));
  }

  private static RecordReader reader() {
    return new RecordReader(References.UNCHECKED, Limits.usual());
  }
}
