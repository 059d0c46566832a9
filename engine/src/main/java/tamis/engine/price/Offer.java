package tamis.engine.price;

import java.math.BigDecimal;
import java.math.MathContext;
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
}
