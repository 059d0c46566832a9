package tamis.plugin.timeline;

import tamis.engine.record.Described;

/** How much a station takes at a time. */
public record StationCapacity(
    @Described(value = "Name, as the stages write it", example = "oven", most = 60) String name,
    @Described(
            value = "How many stages, or loads, it takes at a time",
            atLeast = "1",
            atMost = "1000",
            example = "2")
        int capacity) {}
