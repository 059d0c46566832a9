package tamis.plugin.scaling;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** One ingredient line at the size of the batch. */
public record ScaledLine(
    @Described("Place of the line in the formula, through the formula lines above it") String path,
    @Described("Id of the ingredient") String ingredient,
    @Described("Name of the ingredient") String name,
    @Described("Stage at which it is added") @Nullable String stage,
    @Described("State in which it is measured") @Nullable String state,
    @Described(value = "To weigh", unit = "g") double grams,
    @Described(value = "Lightest, by the spread of the density", unit = "g") double low,
    @Described(value = "Heaviest, by the spread of the density", unit = "g") double high,
    @Described(value = "To the step of a scale", unit = "g") double roundedGrams,
    @Described(value = "What rounding changes", unit = "%") double deviationPercent,
    @Described("To read off at the bench") String display,
    @Described("As the formula counts it, at this size") @Nullable String counted,
    @Described(value = "Part that stays in the batch, if not all", unit = "1")
        @Nullable Double remains,
    @Described(value = "Change at this altitude, already in the figures", unit = "%")
        @Nullable Double altitudePercent,
    @Described("Whether it is taken as needed, outside of mass") @Nullable Boolean asNeeded) {}
