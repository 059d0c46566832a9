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
