package tamis.plugin.costing;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** What a change of one price does. */
public record Rise(
    @Described("Whose price changes") String ingredient,
    @Described(value = "By how much", unit = "%") double percent,
    @Described("Total cost then") Money total,
    @Described("How much more that is; below 0 it is less") Money change,
    @Described(value = "The same as a part of the total", unit = "%")
        @Nullable Double changePercent,
    @Described("Cost of a portion then") @Nullable Money perPortion,
    @Described("With a target: the selling price that keeps it") @Nullable Money price,
    @Described(value = "Food cost at the selling price as it is now", unit = "%")
        @Nullable Double foodCostPercent) {}
