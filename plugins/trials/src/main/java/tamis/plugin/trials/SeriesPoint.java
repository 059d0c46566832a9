package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** One reading with its time and the window it is held against, as it is drawn. */
public record SeriesPoint(
    @Described(value = "Stage it belongs to; left out if to none") @Nullable String stage,
    @Described(value = "What was measured", example = "temperature") String measure,
    @Described("Unit of the value") String unit,
    @Described(value = "Id of the trial", example = "t1") String trial,
    @Described(value = "Since the trial's start", unit = "min") double minute,
    @Described("The reading, in the unit") double value,
    @Described("Lowest inside the window, in the unit") @Nullable Double low,
    @Described("Highest inside the window, in the unit") @Nullable Double high) {}
