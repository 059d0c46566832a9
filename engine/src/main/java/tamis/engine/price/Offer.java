package tamis.engine.price;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collection;
import java.util.List;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Money;

/**
 * A pack with its size in the unit that is used.
 *
 * @param pack as offered
 * @param size grams of an ingredient; of a packaging item its count, grams or whatever it goes by
 */
public record Offer(Pack pack, double size) {
  /** Digits that are carried; nothing is rounded before the end. */
  public static final MathContext DIGITS = MathContext.DECIMAL128;

  /**
   * What so much of the edible part costs as purchased, in the currency of the pack: price of the
   * pack × amount ÷ (size × yield).
   */
  public BigDecimal cost(double amount) {
    return money()
        .amount()
        .multiply(BigDecimal.valueOf(amount), DIGITS)
        .divide(BigDecimal.valueOf(size).multiply(pack.edible(), DIGITS), DIGITS);
  }

  /** What must be bought for so much of the edible part. */
  public double purchased(double amount) {
    return amount / pack.edible().doubleValue();
  }

  public Money money() {
    return pack.price();
  }

  /**
   * Tells of prices with digits below the smallest coin. Single boxes are quoted so, and all digits
   * are counted; for a pack it is more often a slip of the decimal point.
   */
  public static void remarkOnCoins(Collection<Offer> used, Notes notes) {
    List<String> finer =
        used.stream()
            .filter(offer -> offer.money().isFinerThanCoin())
            .map(offer -> offer.pack().item() + " " + offer.money())
            .distinct()
            .toList();
    if (!finer.isEmpty()) {
      notes.remark(
          "price-finer-than-coin",
          "/prices",
          "these prices have digits below the smallest coin of their currency; they are counted as"
              + " they stand, so look whether each is the price of its whole pack: "
              + String.join(", ", finer));
    }
  }
}
