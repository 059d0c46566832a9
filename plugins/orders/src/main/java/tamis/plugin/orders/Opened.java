package tamis.plugin.orders;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Predicate;
import tamis.engine.formula.ByProducts;

/**
 * The eggs and fruit that the day opens: as many as the part asks for of which most is missing when
 * all of it on hand is used. What they give of a part is used before what is on hand of it.
 */
record Opened(Map<String, Double> wholes) {

  /**
   * @param needs grams by ingredient
   * @param isBought whether a part has a price of its own: nothing is opened for it
   */
  static Opened of(Map<String, Double> needs, Stock stock, Predicate<String> isBought) {
    Map<String, Double> missing = new HashMap<>();
    needs.forEach(
        (part, grams) -> {
          if (ByProducts.wholeOf(part) != null && !isBought.test(part)) {
            missing.put(part, Math.max(0, grams - stock.rest(part)));
          }
        });
    return new Opened(ByProducts.opened(missing));
  }

  /** Grams that they give of a part; none of what is no part. */
  double gives(String part) {
    String whole = ByProducts.wholeOf(part);
    if (whole == null) {
      return 0;
    }
    double forOneGram = ByProducts.opened(Map.of(part, 1.0)).getOrDefault(whole, 0.0);
    return forOneGram > 0 ? wholes.getOrDefault(whole, 0.0) / forOneGram : 0;
  }
}
