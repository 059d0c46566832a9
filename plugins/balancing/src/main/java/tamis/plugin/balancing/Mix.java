package tamis.plugin.balancing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Notes;
import tamis.engine.price.Offer;
import tamis.engine.price.Pack;
import tamis.engine.price.Purchases;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Nearest;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Kitchen;

/** What may go into the mix, with all that is asked of it looked up; what is missing is told. */
final class Mix {
  private final Balancing.Input input;
  private final List<Mixed> items = new ArrayList<>();
  private final Map<String, double[]> amounts = new HashMap<>();
  private final @Nullable Currency currency;

  /**
   * @throws Refusal with all that is missing or stands twice
   */
  Mix(Balancing.Input input, Kitchen kitchen, Notes notes) {
    this.input = input;
    Faults faults = new Faults();
    lookUp(kitchen, notes, faults);
    this.currency = currency(faults);
    faults.refuseIfAny();
    for (int i = 0; i < input.bounds().size(); i++) {
      String at = "/bounds/" + i + "/property";
      amounts(input.bounds().get(i).property(), at, faults);
    }
    if (input.of() != null) {
      amounts(input.of(), "/of", faults);
    }
    if (costMatters()) {
      prices(faults);
    }
    faults.refuseIfAny();
  }

  boolean costMatters() {
    return input.aimed() == Balancing.Aim.LEAST_COST || input.costAtMost() != null;
  }

  List<Mixed> items() {
    return items;
  }

  int size() {
    return items.size();
  }

  boolean isPriced() {
    return currency != null && items.stream().allMatch(Mixed::isPriced);
  }

  /** Of all prices; null if there are none, or of several. */
  @Nullable Currency currency() {
    return currency;
  }

  /** What 100 g of each bring of a property that was asked for. */
  double[] amounts(String property) {
    double[] found = amounts.get(property);
    if (found == null) {
      throw new IllegalStateException("not looked up: " + property);
    }
    return found;
  }

  /** What a kilogram of each costs. */
  double[] costs() {
    double[] costs = new double[items.size()];
    for (int i = 0; i < costs.length; i++) {
      @Nullable BigDecimal cost = items.get(i).cost(1000);
      costs[i] = cost == null ? 0 : cost.doubleValue();
    }
    return costs;
  }

  private void lookUp(Kitchen kitchen, Notes notes, Faults faults) {
    List<Pack> packs = new ArrayList<>();
    for (int i = 0; i < input.prices().size(); i++) {
      packs.add(Pack.of(input.prices().get(i), Pack.Origin.REQUEST, "/prices/" + i));
    }
    Purchases purchases = Purchases.of(packs, kitchen.prices(), kitchen::ingredient);
    Map<String, Integer> seen = new HashMap<>();
    for (int i = 0; i < input.ingredients().size(); i++) {
      MixItem item = input.ingredients().get(i);
      IngredientRef reference = item.ingredient();
      String at = "/ingredients/" + i;
      @Nullable Ingredient ingredient =
          reference == null
              ? null
              : faults.gather(at + "/ingredient", () -> kitchen.ingredient(reference));
      boolean priced = ingredient != null && item.pricePerKilogram() == null;
      @Nullable Offer offer =
          priced && ingredient != null
              ? faults.gather("", () -> purchases.of(ingredient, notes))
              : null;
      Mixed mixed = new Mixed(item, ingredient, offer);
      @Nullable Integer earlier = seen.putIfAbsent(mixed.id(), i);
      if (earlier != null) {
        faults.add(
            new Fault(
                FaultCode.DUPLICATE,
                at + (ingredient == null ? "/name" : "/ingredient"),
                mixed.id(),
                null,
                "`" + mixed.id() + "` stands in entry " + earlier + " too"));
      }
      items.add(mixed);
    }
  }

  private @Nullable Currency currency(Faults faults) {
    @Nullable Currency first = null;
    Money most = input.costAtMost();
    if (most != null) {
      first = most.currency();
    }
    for (int i = 0; i < items.size(); i++) {
      @Nullable Money money = items.get(i).money();
      if (money != null && first != null && !money.currency().equals(first)) {
        faults.add(
            FaultCode.INCONSISTENT,
            "/ingredients/" + i,
            "prices are in " + first + " and in " + money.currency() + "; they are not added");
        return null;
      }
      first = money != null ? money.currency() : first;
    }
    return first;
  }

  private void amounts(String name, String at, Faults faults) {
    Property property = Property.of(name);
    boolean own =
        input.ingredients().stream().anyMatch(item -> item.composition().containsKey(name));
    if (!property.isKnownName() && !own) {
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              at,
              name,
              String.join(", ", Property.names()),
              "`"
                  + name
                  + "` is no property known here, and no composition names it"
                  + Nearest.suggestion(name, Property.names())));
      return;
    }
    double[] found = new double[items.size()];
    for (int i = 0; i < found.length; i++) {
      @Nullable Spread value = items.get(i).of(property);
      if (value != null) {
        found[i] = value.typical();
      } else if (!amounts.containsKey(name)) {
        faults.add(
            new Fault(
                FaultCode.MISSING,
                "/ingredients/" + i + "/composition/" + RecordReader.escaped(name),
                null,
                "an amount in 100 g",
                "how much "
                    + name
                    + " is in `"
                    + items.get(i).id()
                    + "` is not known, and not"
                    + " known is not none; give it in `composition`"));
      }
    }
    amounts.put(name, found);
  }

  private void prices(Faults faults) {
    for (int i = 0; i < items.size(); i++) {
      if (!items.get(i).isPriced()) {
        faults.add(
            new Fault(
                FaultCode.MISSING,
                "/ingredients/" + i + "/pricePerKilogram",
                null,
                "a price such as 4.40 EUR",
                "`"
                    + items.get(i).id()
                    + "` has no price, and no price is not free; give one here"
                    + " or in `prices`"));
      }
    }
  }
}
