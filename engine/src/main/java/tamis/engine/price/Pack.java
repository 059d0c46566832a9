package tamis.engine.price;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Purchase;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;

/**
 * A pack as somebody offers it.
 *
 * @param item ingredient or packaging item, by the name that the offer uses
 * @param pack its size
 * @param price of the whole pack
 * @param edible the part of it that is used, more than 0 and at most 1; exact, since a yield that
 *     is rounded before the division shows in the cost
 * @param yieldSaid whether anybody said so
 * @param supplier who sells it
 * @param origin who says so
 * @param pointer where it stands in the request; empty if it does not come from there
 */
public record Pack(
    String item,
    Quantity pack,
    Money price,
    BigDecimal edible,
    boolean yieldSaid,
    @Nullable String supplier,
    Origin origin,
    String pointer) {

  /** Where a price comes from; the earlier goes before the later. */
  public enum Origin {
    REQUEST("the request"),
    PRICE_LIST("the shop's price list"),
    INGREDIENT("the ingredient's document");

    private final String words;

    Origin(String words) {
      this.words = words;
    }

    @Override
    public String toString() {
      return words;
    }
  }

  /** A price of a list or a request. */
  public static Pack of(Price price, Origin origin, String pointer) {
    return new Pack(
        price.ingredient(),
        price.pack(),
        price.price(),
        share(price.yieldPercent()),
        price.yieldPercent() != null,
        price.supplier(),
        origin,
        pointer);
  }

  static Pack of(String item, Purchase purchase) {
    return new Pack(
        item,
        purchase.pack(),
        purchase.price(),
        share(purchase.yieldPercent()),
        purchase.yieldPercent() != null,
        purchase.supplier(),
        Origin.INGREDIENT,
        "");
  }

  private static BigDecimal share(@Nullable Double percent) {
    return percent == null ? BigDecimal.ONE : BigDecimal.valueOf(percent).movePointLeft(2);
  }
}
