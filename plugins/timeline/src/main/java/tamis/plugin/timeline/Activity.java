package tamis.plugin.timeline;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** One piece of work that belongs to no formula. */
public record Activity(
    @Described(value = "Its name among the others", example = "A", most = 200) String id,
    @Described(value = "For a person", example = "Unpack the delivery", most = 400)
        @Nullable String title,
    @Described(
            value = "How long it takes",
            unit = "min",
            atLeast = "0",
            atMost = "1000000",
            example = "4")
        double minutes,
    @Described(value = "What must be finished before", optional = true, most = 10_000)
        List<String> after,
    @Described(value = "What must be finished at the same time", optional = true, most = 100)
        List<String> meets,
    @Described(value = "Longest wait until what comes after it starts", example = "10 min")
        @Nullable TimeSpan within,
    @Described(value = "Where it is done", example = "bench", most = 60) @Nullable String station,
    @Described("Whether it needs a cook's hands all the time") @Nullable Boolean hands) {}
