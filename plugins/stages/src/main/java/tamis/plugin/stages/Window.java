package tamis.plugin.stages;

import tamis.engine.record.Described;

/** Two ends. */
public record Window(
    @Described("Lower end, in the unit that the name tells") double low,
    @Described("Upper end, in the unit that the name tells") double high) {}
