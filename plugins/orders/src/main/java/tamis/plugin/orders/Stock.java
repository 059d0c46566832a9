package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.StockItem;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.price.Purchases;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Quantity;
import tamis.engine.spi.Kitchen;

/** What is on hand; it is never taken below nothing. */
final class Stock {
  private final Map<String, Double> onHand = new LinkedHashMap<>();
  private final Map<String, Double> taken = new LinkedHashMap<>();

  static Stock of(
      List<StockItem> items,
      Kitchen kitchen,
      Function<FormulaRef, Making> makings,
      Notes notes,
      Faults faults) {
    Stock stock = new Stock();
    Map<Object, Integer> seen = new LinkedHashMap<>();
    for (int i = 0; i < items.size(); i++) {
      StockItem item = items.get(i);
      String at = "/stock/" + i;
      try {
        Object what =
            item.ingredient() != null
                ? stock.add(kitchen.ingredient(item.ingredient()), item.quantity(), at, notes)
                : store(makings.apply(formula(item)), item.quantity());
        @Nullable Integer earlier = seen.putIfAbsent(what, i);
        if (earlier != null) {
          faults.add(FaultCode.DUPLICATE, at, "this is on hand in entry " + earlier + " too");
        }
      } catch (Refusal refusal) {
        faults.addAll(refusal, at);
      }
    }
    return stock;
  }

  private static FormulaRef formula(StockItem item) {
    if (item.formula() == null) {
      throw Refusal.of(FaultCode.EXACTLY_ONE, "an ingredient or a formula is on hand");
    }
    return item.formula();
  }

  private String add(Ingredient ingredient, Quantity quantity, String at, Notes notes) {
    try {
      Notes weighed = new Notes();
      double grams =
          new Weighing(null, at + "/quantity", "", weighed)
              .grams(quantity, ingredient, null)
              .typical();
      weighed.remarks().forEach(notes::add);
      onHand.merge(ingredient.id(), grams, Double::sum);
      return ingredient.id();
    } catch (Refusal refusal) {
      throw refusal.under("/quantity");
    }
  }

  private static Making store(Making making, Quantity quantity) {
    @Nullable Double pieces = making.formula().yieldOrNothing().pieces();
    if (quantity.isMeasured() && quantity.dimension() == Dimension.MASS) {
      making.store(Purchases.amount(quantity) / making.finishedGrams());
    } else if (quantity.isMeasured() && quantity.dimension() == Dimension.COUNT && pieces != null) {
      making.store(Purchases.amount(quantity) / pieces);
    } else {
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_DIMENSION,
              "/quantity",
              quantity.text(),
              "a mass, or a number of pieces that the yield counts",
              "`" + making.name() + "` is on hand by mass or by the pieces its yield counts"));
    }
    return making;
  }

  /** What is not taken yet. */
  double rest(String ingredient) {
    return onHand.getOrDefault(ingredient, 0.0) - taken.getOrDefault(ingredient, 0.0);
  }

  /** Takes what there is, at most {@code grams}. */
  double take(String ingredient, double grams) {
    double now = Math.max(0, Math.min(rest(ingredient), grams));
    taken.merge(ingredient, now, Double::sum);
    return now;
  }

  List<Sheet.StockLeft> left(List<Making> order) {
    List<Sheet.StockLeft> left = new ArrayList<>();
    onHand.forEach(
        (ingredient, grams) ->
            left.add(
                new Sheet.StockLeft(
                    ingredient, null, Math.max(0, grams - taken.getOrDefault(ingredient, 0.0)))));
    for (Making making : order) {
      if (making.fromStock() > 0 || making.leftInStock() > 0) {
        left.add(
            new Sheet.StockLeft(
                null, making.name(), making.leftInStock() * making.finishedGrams()));
      }
    }
    return left;
  }
}
