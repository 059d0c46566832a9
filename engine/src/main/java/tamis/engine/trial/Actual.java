package tamis.engine.trial;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;

/** What was really weighed for one line. */
public record Actual(
    @Described(value = "Place of the line in the formula", example = "/lines/3", most = 2_000)
        String path,
    @Described(value = "What was weighed", example = "450 g") Quantity quantity,
    @Described(value = "Lot on the pack", most = 200) @Nullable String lot) {}
