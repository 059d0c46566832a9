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
import tamis.engine.quantity.Money;

/** The packaging of the orders: every ordered thing is packed by itself, in whole boxes. */
final class Wrapping {
  private static final double HARDLY_ANY = 1e-9;

  private final Map<Morning.Group, List<Wrap>> byGroup = new HashMap<>();
  private final Map<String, Double> counts = new LinkedHashMap<>();
  private final Map<String, @Nullable Offer> offers = new LinkedHashMap<>();

  /** So many of one item. */
  private record Wrap(String item, double count) {}

  static Wrapping of(Collection<Morning.Group> groups, Purchases purchases) {
    Wrapping wrapping = new Wrapping();
    for (Morning.Group group : groups) {
      List<Wrap> wraps = new ArrayList<>();
      for (Packaging packaging : group.making().formula().packaging()) {
        if (packaging.quantity().isMeasured()) {
          double one =
              Purchases.amount(packaging.quantity())
                  * group.times()
                  * group.making().one().factor();
          boolean counted = packaging.quantity().dimension() == Dimension.COUNT;
          double count = (counted ? Math.ceil(one - HARDLY_ANY) : one) * group.count();
          wraps.add(new Wrap(packaging.item(), count));
          wrapping.counts.merge(packaging.item(), count, Double::sum);
          if (!wrapping.offers.containsKey(packaging.item())) {
            wrapping.offers.put(
                packaging.item(), purchases.ofItem(packaging.item(), packaging.quantity()));
          }
        }
      }
      wrapping.byGroup.put(group, wraps);
    }
    return wrapping;
  }

  BigDecimal of(Morning.Group group, Rates rates) {
    BigDecimal sum = BigDecimal.ZERO;
    for (Wrap wrap : byGroup.getOrDefault(group, List.of())) {
      @Nullable Offer offer = offers.get(wrap.item());
      if (offer != null) {
        sum = sum.add(rates.amount(offer.cost(wrap.count()), offer.money().currency()));
      }
    }
    return sum;
  }

  Map<String, Double> counts() {
    return counts;
  }

  @Nullable Offer offer(String item) {
    return offers.get(item);
  }

  List<Money> used() {
    List<Money> used = new ArrayList<>();
    for (String item : counts.keySet()) {
      @Nullable Offer offer = offers.get(item);
      if (offer != null) {
        used.add(offer.money());
      }
    }
    return used;
  }

  List<String> missing() {
    return counts.keySet().stream().filter(item -> offers.get(item) == null).toList();
  }
}
