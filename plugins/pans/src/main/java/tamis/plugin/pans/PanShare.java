package tamis.plugin.pans;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** One kind of pan and what of the batter goes into it. */
public record PanShare(
    @Described("Id of the pan, or its shape") String pan,
    @Described("How many") int count,
    @Described(value = "One of them, to the rim", unit = "ml") double millilitres,
    @Described(value = "Batter in one of them", unit = "ml") double batterMillilitres,
    @Described(value = "Batter in one of them", unit = "g") @Nullable Double grams,
    @Described(value = "Inner height", unit = "cm") @Nullable Double heightCm,
    @Described(value = "How high the batter stands", unit = "cm") @Nullable Double depthCm,
    @Described(value = "How much higher than it stood", unit = "cm") @Nullable Double depthChangeCm,
    @Described("Whether its depth is within the rule for other pans")
        @Nullable Boolean keepsDepth) {}
