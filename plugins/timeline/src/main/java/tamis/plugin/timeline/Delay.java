package tamis.plugin.timeline;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A stage that takes longer than it was planned to. */
public record Delay(
    @Described(value = "Id of the stage or activity", example = "foam", most = 300) String stage,
    @Described(
            value = "Id of its formula, where several have a stage of this name",
            example = "coffee-meringue-cream",
            most = 80)
        @Nullable String formula,
    @Described(
            value = "How much longer than planned",
            unit = "min",
            moreThan = "0",
            atMost = "100000",
            example = "6")
        double minutes) {}
