package tamis.engine.price;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;

/**
 * One purchase pack, or a selling price. The item is an ingredient by id or name, a packaging item
 * by its name, or a formula that is sold by its id.
 */
public record Price(
    @Described(
            value =
                "Id or name of an ingredient, name of a packaging item, or id of a formula that is"
                    + " sold",
            example = "butter-unsalted",
            most = 200)
        String ingredient,
    @Described(value = "Size of the pack", example = "5 kg") Quantity pack,
    @Described(value = "Price of the pack", example = "11.95 EUR") Money price,
    @Described(
            value = "Edible part of what is bought; all of it if left out",
            unit = "%",
            moreThan = "0",
            atMost = "100",
            example = "88.5")
        @Nullable Double yieldPercent,
    @Described(value = "Who sells it", example = "the mill", most = 200)
        @Nullable String supplier) {

  /** The edible part, from 0 to 1. */
  public double yieldShare() {
    return yieldPercent == null ? 1 : yieldPercent / 100;
  }
}
