package tamis.plugin.costing;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** One thing that costs. The costs of all lines add up to the total, to the last coin. */
public record CostLine(
    @Described("What kind of cost it is") Kind kind,
    @Described(value = "Id of the ingredient", example = "butter-unsalted")
        @Nullable String ingredient,
    @Described(value = "For a person", example = "unsalted butter") String name,
    @Described(
            value = "Weighed in, over all parts; what is strained off was bought too",
            unit = "g")
        @Nullable Double grams,
    @Described(value = "To be bought for it, with what is trimmed off", unit = "g")
        @Nullable Double purchasedGrams,
    @Described(value = "What is bought, if that is not the ingredient itself", example = "egg")
        @Nullable String boughtAs,
    @Described(value = "How many of a packaging item", example = "2") @Nullable Double count,
    @Described(value = "Time of hands", unit = "min") @Nullable Double minutes,
    @Described(value = "Energy", unit = "kWh") @Nullable Double kilowattHours,
    @Described("Its part of the total, rounded so that all lines add up; absent if not known")
        @Nullable Money cost,
    @Described("The same before it is rounded") @Nullable BigDecimal unrounded,
    @Described(value = "Its part of the total", unit = "%") @Nullable Double percent,
    @Described(value = "The pack it is bought in", example = "10 kg") @Nullable String pack,
    @Described(value = "Price of that pack", example = "84.00 EUR") @Nullable Money packPrice,
    @Described(value = "Who sells it") @Nullable String supplier) {

  /** What kind of cost it is. */
  public enum Kind {
    INGREDIENT,
    PACKAGING,
    LABOUR,
    ENERGY
  }
}
