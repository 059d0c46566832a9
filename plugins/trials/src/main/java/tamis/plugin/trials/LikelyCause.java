package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A measure that goes with the outcome. That it causes it is not shown. */
public record LikelyCause(
    @Described("The cause in words") String cause,
    @Described("Stage it belongs to; left out if to none") @Nullable String stage,
    @Described("What was measured") String measure,
    @Described("Ingredient, change or part that is meant") @Nullable String of,
    @Described("The figures that speak for it") String support,
    @Described("How well it tells the outcomes apart: 1 wholly") double separation,
    @Described(value = "How often chance alone would do as well, as a part of 1", unit = "1")
        double chance,
    @Described(
            value =
                "The same over all that was looked at: the chance times the number of looks, at"
                    + " most 1",
            unit = "1")
        double chanceOverLooks) {}
