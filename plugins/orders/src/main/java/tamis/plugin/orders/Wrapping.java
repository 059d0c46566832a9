package tamis.plugin.orders;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Packaging;
import tamis.engine.price.Offer;
import tamis.engine.price.Purchases;
import tamis.engine.price.Rates;
import tamis.engine.quantity.Dimension;

/**
 * The packaging of the orders: every ordered thing is packed by itself, in whole boxes. What is
 * measured is not added to what is counted, though both go by one name.
 */
final class Wrapping {
  private static final double HARDLY_ANY = 1e-9;

  private final Map<OrderGroup, List<Wrap>> byGroup = new HashMap<>();
  private final Map<Item, Double> counts = new LinkedHashMap<>();
  private final Map<Item, @Nullable Offer> offers = new LinkedHashMap<>();

  /** Something to pack with, and the unit that it goes by. */
  record Item(String name, String unit) {}

  /** So much of one item. */
  private record Wrap(Item item, double count) {}

  static Wrapping of(Collection<OrderGroup> groups, Purchases purchases) {
    Wrapping wrapping = new Wrapping();
    for (OrderGroup group : groups) {
      List<Wrap> wraps = new ArrayList<>();
      for (Packaging packaging : group.making().formula().packaging()) {
        if (packaging.quantity().isMeasured()) {
          double one =
              Purchases.amount(packaging.quantity())
                  * group.times()
                  * group.making().one().factor();
          Dimension goesBy = packaging.quantity().dimension();
          boolean counted = goesBy == Dimension.COUNT;
          Item item = new Item(packaging.item(), goesBy.canonical());
          double count = (counted ? Math.ceil(one - HARDLY_ANY) : one) * group.count();
          wraps.add(new Wrap(item, count));
          wrapping.counts.merge(item, count, Double::sum);
          if (!wrapping.offers.containsKey(item)) {
            wrapping.offers.put(item, purchases.ofItem(item.name(), packaging.quantity()));
          }
        }
      }
      wrapping.byGroup.put(group, wraps);
    }
    return wrapping;
  }

  BigDecimal of(OrderGroup group, Rates rates) {
    BigDecimal sum = BigDecimal.ZERO;
    for (Wrap wrap : byGroup.getOrDefault(group, List.of())) {
      @Nullable Offer offer = offers.get(wrap.item());
      if (offer != null) {
        sum = sum.add(rates.amount(offer.cost(wrap.count()), offer.money().currency()));
      }
    }
    return sum;
  }

  Map<Item, Double> counts() {
    return counts;
  }

  @Nullable Offer offer(Item item) {
    return offers.get(item);
  }

  List<Offer> used() {
    List<Offer> used = new ArrayList<>();
    for (Item item : counts.keySet()) {
      @Nullable Offer offer = offers.get(item);
      if (offer != null) {
        used.add(offer);
      }
    }
    return used;
  }

  List<String> missing() {
    return counts.keySet().stream()
        .filter(item -> offers.get(item) == null)
        .map(Item::name)
        .distinct()
        .toList();
  }
}
