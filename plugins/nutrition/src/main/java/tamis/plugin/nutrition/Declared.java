package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A figure as a label prints it. */
public record Declared(
    @Described(value = "As printed", example = "12 g") String text,
    @Described("The printed number") double amount,
    @Described(value = "Its unit", example = "g") String unit,
    @Described("Whether it is less than the number") boolean lessThan,
    @Described(value = "Part of the daily value or reference intake, as printed", unit = "%")
        @Nullable Double percent,
    @Described("Lowest that analysis may find under the regime's tolerance")
        @Nullable Double toleranceLow,
    @Described("Highest that analysis may find under the regime's tolerance")
        @Nullable Double toleranceHigh,
    @Described("False if ingredients that do not tell this figure could change what is printed")
        boolean complete) {}
