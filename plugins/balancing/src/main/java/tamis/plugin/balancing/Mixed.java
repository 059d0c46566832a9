package tamis.plugin.balancing;

import java.math.BigDecimal;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.Offer;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Spread;

/**
 * One thing that may go in, looked up.
 *
 * @param item as it was asked for
 * @param ingredient of the tables, or null if its composition is given
 * @param offer what it is bought for, or null
 */
record Mixed(MixItem item, @Nullable Ingredient ingredient, @Nullable Offer offer) {

  String id() {
    return ingredient == null ? String.valueOf(item.name()) : ingredient.id();
  }

  String title() {
    return ingredient == null ? String.valueOf(item.name()) : ingredient.title("en");
  }

  /** Of 100 g, or null if it is not known. */
  @Nullable Spread of(Property property) {
    Map<String, Double> given = item.composition();
    @Nullable Double told = property.of(given);
    if (told != null) {
      return Spread.exactly(told);
    }
    return ingredient == null ? null : property.of(ingredient);
  }

  boolean isPriced() {
    return item.pricePerKilogram() != null || offer != null;
  }

  /** In the currency of its price, exact; null without a price. */
  @Nullable BigDecimal cost(double grams) {
    Money own = item.pricePerKilogram();
    if (own != null) {
      return own.amount().multiply(BigDecimal.valueOf(grams)).movePointLeft(3);
    }
    return offer == null ? null : offer.cost(grams);
  }

  @Nullable Money money() {
    Money own = item.pricePerKilogram();
    return own != null || offer == null ? own : offer.money();
  }
}
