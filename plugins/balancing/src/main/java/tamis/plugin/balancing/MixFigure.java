package tamis.plugin.balancing;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** What a property of the mix comes to. */
public record MixFigure(
    @Described(value = "The property", example = "fat") String property,
    @Described("Unit of the figures") String unit,
    @Described("What it comes to; left out if it is not known of everything that goes in")
        @Nullable Double value,
    @Described("Lowest that it may really be, where the figure has a spread")
        @Nullable Double valueLow,
    @Described("Highest that it may really be, where the figure has a spread")
        @Nullable Double valueHigh,
    @Described("At least, as asked") @Nullable Double low,
    @Described("At most, as asked") @Nullable Double high,
    @Described("Target, as asked") @Nullable Double target,
    @Described("Off the target; negative below") @Nullable Double deviation,
    @Described("Which bound it stands at; left out if none") @Nullable Side atBound) {}
