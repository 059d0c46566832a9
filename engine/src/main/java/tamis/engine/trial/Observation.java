package tamis.engine.trial;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** One reading, symptom or note, with its time. */
public record Observation(
    @Described(
            value = "Chosen by the caller, so that a repeat is known as one",
            example = "o1",
            most = 80)
        String id,
    @Described(value = "Stage of the formula", example = "syrup", most = 80) @Nullable String stage,
    @Described(value = "Local time, ISO 8601", example = "2026-04-11T08:22") LocalDateTime at,
    @Described(
            value = "What was measured: temperature, brix, specific-gravity, ph, mass, duration …",
            example = "temperature",
            most = 40)
        @Nullable String measure,
    @Described(value = "The reading with its unit", example = "116 °C", most = 60)
        @Nullable String value,
    @Described(value = "How long the stage took", example = "11 min") @Nullable TimeSpan duration,
    @Described(
            value = "What went wrong: curdled, soupy, grainy, split, lumpy …",
            example = "curdled",
            most = 80)
        @Nullable String symptom,
    @Described(value = "Tasting score", atLeast = "0", atMost = "10", example = "8")
        @Nullable Double score,
    @Described(value = "Reference of a photo", most = 400) @Nullable String photo,
    @Described(value = "In the baker's words", most = 4_000) @Nullable String note) {}
