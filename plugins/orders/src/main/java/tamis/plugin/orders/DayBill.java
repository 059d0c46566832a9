package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.ByProducts;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.PieceMass;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.price.Purchases;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.spi.Kitchen;

/**
 * What all batches use together.
 *
 * @param grams of each ingredient
 * @param net what must be bought: parts of eggs and fruit as the eggs and fruit that are opened
 * @param byProducts what is left of eggs and fruit
 * @param used the rows of the sheet
 */
record DayBill(
    Map<Ingredient, Double> grams,
    Map<Ingredient, Double> net,
    List<Sheet.Left> byProducts,
    List<Sheet.Used> used) {

  static DayBill of(List<Making> order, Stock stock, Purchases purchases, Kitchen kitchen) {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    Set<String> apart = new LinkedHashSet<>();
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
        ByProducts.of(own).forEach(left -> apart.add(left.ingredient()));
        making.one().root().lines().stream()
            .filter(BatchLine::isAsNeeded)
            .forEach(line -> asNeeded.add(line.ingredient()));
      }
    }
    Map<String, Double> needs = new HashMap<>();
    Set<String> bought = new HashSet<>();
    grams.forEach(
        (ingredient, all) -> {
          needs.merge(ingredient.id(), all, Double::sum);
          if (purchases.of(ingredient, new Notes()) != null) {
            bought.add(ingredient.id());
          }
        });
    Opened opened = Opened.of(needs, stock, bought::contains);
    Map<Ingredient, Double> net = new LinkedHashMap<>();
    List<Sheet.Used> used = new ArrayList<>();
    grams.forEach(
        (ingredient, all) -> {
          double given = Math.min(all, opened.gives(ingredient.id()));
          double taken = stock.take(ingredient.id(), all - given);
          net.put(ingredient, all - given - taken);
          used.add(
              new Sheet.Used(
                  ingredient.id(),
                  ingredient.title("en"),
                  all,
                  taken,
                  asNeeded.contains(ingredient)));
        });
    opened.wholes().forEach((whole, number) -> open(whole, number, stock, kitchen, net));
    return new DayBill(grams, net, left(apart, needs, opened), used);
  }

  /** Eggs on hand are broken first. */
  private static void open(
      String id, double number, Stock stock, Kitchen kitchen, Map<Ingredient, Double> net) {
    if (number > 0) {
      Ingredient whole = kitchen.ingredient(new IngredientRef(id));
      double grams =
          new Weighing(Measures.METRIC, "", "", new Notes())
              .grams(Quantity.of(number, PieceMass.EACH), whole, null)
              .typical();
      net.merge(whole, grams - stock.take(id, grams), Double::sum);
    }
  }

  /** Of what one batch or another would leave: all that is got of it, less what the day uses. */
  private static List<Sheet.Left> left(
      Set<String> apart, Map<String, Double> needs, Opened opened) {
    List<Sheet.Left> rows = new ArrayList<>();
    for (String part : apart) {
      double made = opened.gives(part);
      double used = Math.min(made, needs.getOrDefault(part, 0.0));
      String whole = ByProducts.wholeOf(part);
      if (made > 0) {
        rows.add(new Sheet.Left(part, made - used, whole == null ? part : whole, made, used));
      }
    }
    return rows;
  }
}
