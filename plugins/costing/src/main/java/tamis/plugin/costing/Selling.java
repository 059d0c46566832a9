package tamis.plugin.costing;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.price.Offer;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;

/**
 * What one thing that is sold costs, and its price. Food cost % = ingredients ÷ selling price × 100
 * (common trade definition), margin % = (price − all costs) ÷ price × 100, of the price as shown.
 *
 * @param priceFor what is sold
 * @param units so many of it in the batch
 */
record Selling(PriceFor priceFor, double units) {
  private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

  static Selling of(
      Cost.Input input, @Nullable Double portions, @Nullable Double pieces, double finishedGrams) {
    PriceFor asked = input.priceFor();
    if (asked == null) {
      return portions == null
          ? new Selling(PriceFor.BATCH, 1)
          : new Selling(PriceFor.PORTION, portions);
    }
    @Nullable Double units =
        switch (asked) {
          case PORTION -> portions;
          case PIECE -> pieces;
          case KILOGRAM -> (Double) (finishedGrams / 1000);
          case BATCH -> (Double) 1.0;
        };
    if (units == null) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          "/priceFor",
          "the yield of the formula does not say how many "
              + (asked == PriceFor.PORTION ? "portions" : "pieces")
              + " it gives");
    }
    return new Selling(asked, units);
  }

  BigDecimal each(BigDecimal batch) {
    return batch.divide(BigDecimal.valueOf(units), Offer.DIGITS);
  }

  /** The price, as given or by the target; null if neither is. */
  @Nullable Money price(Cost.Input input, BigDecimal food, BigDecimal total, Rates rates) {
    if (input.sellingPrice() != null) {
      return Shares.rounded(rates.amount(input.sellingPrice()), rates.currency());
    }
    if (input.targetFoodCostPercent() != null) {
      BigDecimal part = BigDecimal.valueOf(input.targetFoodCostPercent());
      return Shares.rounded(
          each(food).multiply(HUNDRED).divide(part, Offer.DIGITS), rates.currency());
    }
    if (input.targetMarginPercent() != null) {
      BigDecimal part = HUNDRED.subtract(BigDecimal.valueOf(input.targetMarginPercent()));
      return Shares.rounded(
          each(total).multiply(HUNDRED).divide(part, Offer.DIGITS), rates.currency());
    }
    return null;
  }

  /** A cost of the batch as a part of the price, in percent; null without a price. */
  @Nullable Double percent(BigDecimal cost, @Nullable Money price) {
    return price == null || price.amount().signum() == 0
        ? null
        : (Double) each(cost).multiply(HUNDRED).divide(price.amount(), Offer.DIGITS).doubleValue();
  }
}
