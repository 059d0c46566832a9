package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.ByProducts;
import tamis.engine.ingredient.Ingredient;

/**
 * What all batches use together.
 *
 * @param grams of each ingredient
 * @param net what of it is not on hand
 * @param byProducts what is left of eggs and fruit
 * @param used the rows of the sheet
 */
record DayBill(
    Map<Ingredient, Double> grams,
    Map<Ingredient, Double> net,
    List<Sheet.Left> byProducts,
    List<Sheet.Used> used) {

  static DayBill of(List<Making> order, Stock stock) {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    Map<String, Double> apart = new LinkedHashMap<>();
    Set<Ingredient> asNeeded = new LinkedHashSet<>();
    for (Making making : order) {
      if (making.made() > 0) {
        Map<String, Double> own = new HashMap<>();
        making
            .ownGrams()
            .forEach(
                (ingredient, one) -> {
                  grams.merge(ingredient, one * making.made(), Double::sum);
                  own.put(ingredient.id(), one * making.made());
                });
        ByProducts.of(own)
            .forEach(left -> apart.merge(left.ingredient(), left.grams(), Double::sum));
        making.one().root().lines().stream()
            .filter(BatchLine::isAsNeeded)
            .forEach(line -> asNeeded.add(line.ingredient()));
      }
    }
    Map<Ingredient, Double> net = new LinkedHashMap<>();
    List<Sheet.Used> used = new ArrayList<>();
    grams.forEach(
        (ingredient, all) -> {
          double taken = stock.take(ingredient.id(), all);
          net.put(ingredient, all - taken);
          used.add(
              new Sheet.Used(
                  ingredient.id(),
                  ingredient.title("en"),
                  all,
                  taken,
                  asNeeded.contains(ingredient)));
        });
    return new DayBill(grams, net, left(grams, apart), used);
  }

  /** What every batch by itself would leave, less what others of the day use of it. */
  private static List<Sheet.Left> left(Map<Ingredient, Double> grams, Map<String, Double> apart) {
    Map<String, Double> together = new HashMap<>();
    grams.forEach((ingredient, one) -> together.put(ingredient.id(), one));
    Map<String, Double> left = new LinkedHashMap<>();
    ByProducts.of(together).forEach(one -> left.put(one.ingredient(), one.grams()));
    List<Sheet.Left> rows = new ArrayList<>();
    apart.forEach(
        (ingredient, made) -> {
          double rest = Math.min(made, left.getOrDefault(ingredient, 0.0));
          String whole = ByProducts.wholeOf(ingredient);
          rows.add(
              new Sheet.Left(
                  ingredient, rest, whole == null ? ingredient : whole, made, made - rest));
        });
    return rows;
  }
}
