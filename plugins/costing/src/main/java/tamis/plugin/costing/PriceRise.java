package tamis.plugin.costing;

import tamis.engine.record.Described;

/** What if the price of one thing changed. */
public record PriceRise(
    @Described(
            value = "Ingredient or packaging item of the formula whose price changes",
            example = "butter-unsalted",
            most = 200)
        String ingredient,
    @Described(
            value = "By how much; below 0 it falls",
            unit = "%",
            atLeast = "-100",
            atMost = "100000",
            example = "18")
        double percent) {}
