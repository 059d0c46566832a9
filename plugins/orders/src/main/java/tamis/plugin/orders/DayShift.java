package tamis.plugin.orders;

import tamis.engine.record.Described;

/** When hands are there, as the timeline reads it. */
public record DayShift(
    @Described(
            value = "Begin: a local date-time, or a time of day for every day",
            example = "04:00",
            most = 40)
        String from,
    @Described(value = "End, likewise", example = "12:00", most = 40) String to) {}
