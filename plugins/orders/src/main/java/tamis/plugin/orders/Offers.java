package tamis.plugin.orders;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Yield;
import tamis.engine.price.Offer;
import tamis.engine.price.Price;
import tamis.engine.price.Purchases;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.spi.Kitchen;

/**
 * What a shop sells things for. A row of the price list whose item is a formula's id is a selling
 * price: {@code 1 each} is a piece as the yield counts them, else a portion; a mass is that of the
 * finished product. The row {@code mark-up} says what one of cost is sold for where there is no
 * such row.
 */
final class Offers {
  static final String MARK_UP = "mark-up";

  private final Kitchen kitchen;
  private final Map<String, Price> rows = new HashMap<>();

  Offers(Kitchen kitchen) {
    this.kitchen = kitchen;
    kitchen.prices().prices().forEach(price -> rows.putIfAbsent(price.ingredient(), price));
  }

  boolean isOnOffer(String formula) {
    return rows.containsKey(formula) || rows.containsKey(MARK_UP);
  }

  /** The price of one batch, rounded to the smallest coin; null if it is on request. */
  @Nullable Money price(String formula, Batch batch) {
    @Nullable Price row = rows.get(formula);
    if (row == null) {
      return markedUp(formula, batch);
    }
    @Nullable BigDecimal units = units(row.pack(), batch);
    return units == null || row.price().amount().signum() <= 0
        ? null
        : Shares.rounded(
            row.price().amount().multiply(units, Offer.DIGITS), row.price().currency());
  }

  /** So many of what the row sells; null if the batch is not counted or weighed so. */
  private static @Nullable BigDecimal units(Quantity pack, Batch batch) {
    double one = Purchases.amount(pack);
    if (one <= 0) {
      return null;
    }
    if (pack.dimension() == Dimension.MASS) {
      return share(batch.root().finished().typical(), one);
    }
    Yield yield = batch.root().formula().yieldOrNothing();
    @Nullable Double written = yield.pieces() == null ? yield.portions() : yield.pieces();
    return pack.dimension() == Dimension.COUNT && written != null
        ? share(written * batch.factor(), one)
        : null;
  }

  private static BigDecimal share(double amount, double of) {
    return BigDecimal.valueOf(amount).divide(BigDecimal.valueOf(of), Offer.DIGITS);
  }

  private @Nullable Money markedUp(String formula, Batch batch) {
    @Nullable Price row = rows.get(MARK_UP);
    if (row == null) {
      return null;
    }
    Found cost;
    try {
      cost =
          Found.of(
              kitchen
                  .calculate(
                      "cost",
                      Written.map(
                          "formula",
                          formula,
                          "to",
                          Written.of(Times.of(batch.root().formula(), batch.factor()))))
                  .result());
    } catch (Refusal notToBeTold) {
      return null;
    }
    @Nullable String total = cost.text("total");
    @Nullable Double exact = cost.number("unroundedTotal");
    boolean whole = cost.texts("incomplete").isEmpty();
    if (!whole || total == null || exact == null || !currency(total, row)) {
      return null;
    }
    BigDecimal times = share(1, Purchases.amount(row.pack())).multiply(row.price().amount());
    return Shares.rounded(
        BigDecimal.valueOf(exact).multiply(times, Offer.DIGITS), row.price().currency());
  }

  private static boolean currency(String total, Price row) {
    return Money.parse(total).currency().equals(row.price().currency());
  }
}
