package tamis.plugin.timeline;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** One stage, batch load or activity with its times. */
public record Step(
    @Described(value = "Its name among the steps", example = "coffee-meringue-cream/foam")
        String id,
    @Described(value = "Id of its formula", example = "coffee-meringue-cream")
        @Nullable String formula,
    @Described(value = "Id of its stage", example = "foam") @Nullable String stage,
    @Described(value = "For a person", example = "Whip the whites") String title,
    @Described(value = "Where it is done", example = "mixer") @Nullable String station,
    @Described("Whether it needs a cook's hands all the time") boolean hands,
    @Described(value = "How long it takes", unit = "min") double minutes,
    @Described(value = "Local time, if a time was given", example = "2026-05-01T07:40")
        @Nullable String start,
    @Described(value = "Local time, if a time was given", example = "2026-05-01T07:48")
        @Nullable String finish,
    @Described(value = "Earliest start, from the start of the whole", unit = "min")
        double earliestStart,
    @Described(value = "Earliest finish, from the start of the whole", unit = "min")
        double earliestFinish,
    @Described(value = "Latest start, from the start of the whole", unit = "min")
        double latestStart,
    @Described(value = "Latest finish, from the start of the whole", unit = "min")
        double latestFinish,
    @Described(
            name = "float",
            value = "From its earliest to its latest start: how far it may move",
            unit = "min")
        double spare,
    @Described("Whether it cannot move at all") boolean critical,
    @Described("Whether it had started when the rest was planned anew") @Nullable Boolean started,
    @Described(
            value = "How long it waits for what comes next, where that should not be",
            unit = "min")
        @Nullable Double holdMinutes,
    @Described(value = "How it is held", example = "lower the heat: 3 min")
        @Nullable String hold) {}
