package tamis.plugin.orders;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.price.Offer;
import tamis.engine.price.PricedBill;
import tamis.engine.price.Purchases;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Kitchen;

/** What must be bought, in whole packs; a part without a price as the whole it comes from. */
record ShoppingList(Purchases purchases, Kitchen kitchen, @Nullable Rates rates) {
  private static final double HARDLY_ANY = 1e-9;

  /** Paid for, but not carried home. */
  private static final String TAP = "water";

  /** Grams of one thing to buy. */
  private record Need(double grams, @Nullable Offer offer) {
    Need plus(Need more) {
      return new Need(grams + more.grams, offer);
    }
  }

  List<Sheet.Bought> of(Map<Ingredient, Double> net, Wrapping wrapping, Notes notes) {
    Map<String, Need> needs = new LinkedHashMap<>();
    for (PricedBill.Row row :
        PricedBill.of(net, purchases, kitchen::ingredient, new Notes()).rows()) {
      boolean fromTheTap = TAP.equals(row.ingredient().id());
      if (row.boughtGrams() > HARDLY_ANY && !fromTheTap) {
        Ingredient bought = row.boughtAs() == null ? row.ingredient() : row.boughtAs();
        needs.merge(bought.id(), new Need(row.boughtGrams(), row.offer()), Need::plus);
      }
    }
    List<Sheet.Bought> list = new ArrayList<>();
    needs.forEach(
        (item, need) -> {
          list.add(bought(item, need.grams(), null, null, need.offer()));
        });
    wrapping
        .counts()
        .forEach(
            (item, count) ->
                list.add(bought(item.name(), null, count, item.unit(), wrapping.offer(item))));
    if (list.stream().anyMatch(one -> one.packs() == null)) {
      notes.remark(
          "pack-not-known",
          "/prices",
          "what has no price has no pack either; the list says only how much of it is needed");
    }
    return list;
  }

  private Sheet.Bought bought(
      String item,
      @Nullable Double grams,
      @Nullable Double count,
      @Nullable String unit,
      @Nullable Offer offer) {
    if (offer == null) {
      return new Sheet.Bought(item, grams, count, unit, null, null, null, null, null);
    }
    double need = grams != null ? grams : count == null ? 0 : count;
    double one = offer.size() * offer.pack().edible().doubleValue();
    double packs = Math.ceil(need / one - HARDLY_ANY);
    return new Sheet.Bought(
        item,
        grams,
        count,
        unit,
        offer.pack().pack().text(),
        (long) packs,
        price(offer, packs),
        grams == null ? null : (Double) Math.max(0, packs * one - grams),
        offer.pack().supplier());
  }

  private @Nullable Money price(Offer offer, double packs) {
    return rates == null
        ? null
        : Shares.rounded(
            rates.amount(offer.money()).multiply(BigDecimal.valueOf(packs), Offer.DIGITS),
            rates.currency());
  }
}
