package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;

/** How an ingredient is bought. */
public record Purchase(
    @Described(value = "Size of the pack", example = "5 kg") Quantity pack,
    @Described(value = "Price of the pack", example = "11.95 EUR") Money price,
    @Described(
            value = "Edible part of what is bought",
            unit = "%",
            moreThan = "0",
            atMost = "100",
            example = "88.5")
        @Nullable Double yieldPercent,
    @Described(value = "Who sells it", most = 200) @Nullable String supplier) {}
