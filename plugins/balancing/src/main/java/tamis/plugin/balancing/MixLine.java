package tamis.plugin.balancing;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** What goes in of one ingredient. */
public record MixLine(
    @Described(value = "Id of the ingredient, or the name that was given", example = "milk-whole")
        String ingredient,
    @Described("Name to print") String name,
    @Described(value = "How much", unit = "g") double grams,
    @Described(value = "Part of the mix", unit = "%") double percent,
    @Described("Whether it stands at its own bound: low or high; left out if not")
        @Nullable Side atBound,
    @Described("What it costs; left out if it has no price") @Nullable Money cost) {}
