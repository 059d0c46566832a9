package tamis.plugin.orders;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.price.Offer;
import tamis.engine.price.Pack;
import tamis.engine.price.PricedBill;
import tamis.engine.price.Purchases;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Kitchen;

/**
 * What the morning costs: every gram at the price of the day, each order with the parts it takes,
 * its packaging beside; what is over by itself. All of it adds up to the cost of all, to the last
 * coin: the exact sum is rounded once and shared out by largest remainder.
 */
final class DayCost {
  private final @Nullable Shares shares;
  private final int orders;
  private final List<String> missing;
  private final List<Sheet.Bought> purchases;

  private DayCost(
      @Nullable Shares shares, int orders, List<String> missing, List<Sheet.Bought> purchases) {
    this.shares = shares;
    this.orders = orders;
    this.missing = missing;
    this.purchases = purchases;
  }

  /** What things cost: prices that came with the orders go before those of the shop. */
  static Purchases purchases(Production.Input input, Kitchen kitchen) {
    List<Pack> given = new ArrayList<>();
    for (int i = 0; i < input.prices().size(); i++) {
      given.add(Pack.of(input.prices().get(i), Pack.Origin.REQUEST, "/prices/" + i));
    }
    return Purchases.of(given, kitchen.prices(), kitchen::ingredient);
  }

  static DayCost of(
      Production.Input input,
      DayBill bill,
      Purchases purchases,
      List<Making> order,
      Collection<OrderGroup> groups,
      Kitchen kitchen,
      Notes notes) {
    PricedBill priced = PricedBill.of(needed(bill, order), purchases, kitchen::ingredient, notes);
    Wrapping wrapping = Wrapping.of(groups, purchases);
    List<Offer> used = new ArrayList<>(wrapping.used());
    for (PricedBill.Row row : priced.rows()) {
      if (row.offer() != null && row.grams() > 0) {
        used.add(row.offer());
      }
    }
    Offer.remarkOnCoins(used, notes);
    List<Money> money = used.stream().map(Offer::money).toList();
    @Nullable Rates rates = Rates.of(input.currency(), input.rates(), money);
    List<String> missing = missing(priced, wrapping, notes);
    ShoppingList list = new ShoppingList(purchases, kitchen, rates);
    List<Sheet.Bought> bought = list.of(bill.net(), wrapping, notes);
    if (rates == null) {
      return new DayCost(null, groups.size(), missing, bought);
    }
    Map<Making, BigDecimal> perTime = perTime(order, perGram(priced, rates));
    List<BigDecimal> exact = new ArrayList<>();
    for (OrderGroup group : groups) {
      BigDecimal times = BigDecimal.valueOf(group.times() * group.count());
      exact.add(
          cost(group.making(), perTime)
              .multiply(times, Offer.DIGITS)
              .add(wrapping.of(group, rates)));
    }
    BigDecimal spare = BigDecimal.ZERO;
    BigDecimal stock = BigDecimal.ZERO;
    for (Making making : order) {
      BigDecimal one = cost(making, perTime);
      spare = spare.add(one.multiply(BigDecimal.valueOf(making.spare()), Offer.DIGITS));
      stock = stock.add(one.multiply(BigDecimal.valueOf(making.fromStock()), Offer.DIGITS));
    }
    exact.add(spare);
    exact.add(stock.negate());
    return new DayCost(Shares.of(exact, rates.currency()), groups.size(), missing, bought);
  }

  /** What the batches use; of what stock gave finished, what it would have used. */
  private static Map<Ingredient, Double> needed(DayBill bill, List<Making> order) {
    Map<Ingredient, Double> needed = new LinkedHashMap<>(bill.grams());
    for (Making making : order) {
      if (making.made() == 0 && making.fromStock() > 0) {
        making
            .one()
            .bill()
            .forEach(row -> needed.putIfAbsent(row.ingredient(), row.grams().typical()));
      }
    }
    return needed;
  }

  private static Map<String, BigDecimal> perGram(PricedBill priced, Rates rates) {
    Map<String, BigDecimal> perGram = new HashMap<>();
    for (PricedBill.Row row : priced.rows()) {
      @Nullable BigDecimal cost = row.cost();
      if (cost != null && row.offer() != null && row.grams() > 0) {
        BigDecimal converted = rates.amount(cost, row.offer().money().currency());
        perGram.put(
            row.ingredient().id(), converted.divide(BigDecimal.valueOf(row.grams()), Offer.DIGITS));
      }
    }
    return perGram;
  }

  /** Of every formula made once, with its parts; parts stand before what takes them up. */
  private static Map<Making, BigDecimal> perTime(
      List<Making> order, Map<String, BigDecimal> perGram) {
    Map<Making, BigDecimal> perTime = new HashMap<>();
    for (Making making : order) {
      BigDecimal[] sum = {BigDecimal.ZERO};
      making
          .ownGrams()
          .forEach(
              (ingredient, grams) ->
                  sum[0] =
                      sum[0].add(
                          perGram
                              .getOrDefault(ingredient.id(), BigDecimal.ZERO)
                              .multiply(BigDecimal.valueOf(grams), Offer.DIGITS)));
      making
          .parts()
          .forEach(
              (part, times) ->
                  sum[0] =
                      sum[0].add(
                          cost(part, perTime).multiply(BigDecimal.valueOf(times), Offer.DIGITS)));
      perTime.put(making, sum[0]);
    }
    return perTime;
  }

  private static BigDecimal cost(Making making, Map<Making, BigDecimal> perTime) {
    return perTime.getOrDefault(making, BigDecimal.ZERO);
  }

  private static List<String> missing(PricedBill priced, Wrapping wrapping, Notes notes) {
    List<String> missing = new ArrayList<>();
    List<String> free = new ArrayList<>();
    for (PricedBill.Row row : priced.rows()) {
      if (row.grams() > 0 && row.offer() == null) {
        missing.add(row.ingredient().id());
      } else if (row.offer() != null && row.offer().money().amount().signum() == 0) {
        free.add(row.ingredient().id());
      }
    }
    missing.addAll(wrapping.missing());
    if (!missing.isEmpty()) {
      notes.remark(
          "price-missing",
          "/prices",
          "the cost is known in part only: there is no price of " + String.join(", ", missing));
    }
    if (!free.isEmpty()) {
      notes.remark(
          "price-zero",
          "/prices",
          "the price is 0, so these count as costing nothing: " + String.join(", ", free));
    }
    return missing;
  }

  private @Nullable Money share(int place) {
    return shares == null ? null : shares.parts().get(place);
  }

  @Nullable Money ofOrder(int place) {
    return share(place);
  }

  @Nullable Money total() {
    return shares == null ? null : shares.total();
  }

  @Nullable Money spare() {
    return share(orders);
  }

  /** What stock spared, as a positive amount. */
  @Nullable Money stock() {
    @Nullable Money less = share(orders + 1);
    return less == null ? null : Money.zero(less.currency()).minus(less);
  }

  List<String> missing() {
    return missing;
  }

  List<Sheet.Bought> purchases() {
    return purchases;
  }

  List<String> incomplete(int rows) {
    if (missing.isEmpty()) {
      return List.of();
    }
    List<String> pointers = new ArrayList<>(List.of("/cost", "/spareCost", "/stockCost"));
    for (int i = 0; i < rows; i++) {
      pointers.add("/orders/" + i + "/cost");
    }
    return pointers;
  }
}
