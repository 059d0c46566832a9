package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** One step of work with its station, time and target. */
public record Stage(
    @Described(
            value = "Lower-case words with hyphens, once in a formula",
            example = "syrup",
            most = 80)
        String id,
    @Described(value = "For a person", example = "Cook the syrup", most = 400)
        @Nullable String title,
    @Described(
            value = "Where it is done: stove, mixer, oven, fridge, bench …",
            example = "stove",
            most = 60)
        @Nullable String station,
    @Described(value = "How long", example = "12 min") @Nullable TimeSpan duration,
    @Described("Whether it needs hands all the time") @Nullable Boolean hands,
    @Described("The window it must end in") @Nullable StageTarget target,
    @Described(value = "What to look, smell or feel for", most = 2_000) @Nullable String cue,
    @Described(value = "Stages that must be finished before", optional = true, most = 100)
        List<String> after,
    @Described(value = "Stages that must be finished at the same time", optional = true, most = 100)
        List<String> meets,
    @Described("What it is repeated for") @Nullable Per per,
    @Described(value = "How much one load holds", example = "20 each") @Nullable Quantity load,
    @Described(value = "Longest wait before the next stage", example = "10 min")
        @Nullable TimeSpan within) {}
