package tamis.plugin.equivalents;

import tamis.engine.record.Described;

/** What changes besides the ingredient itself. */
public record AlsoAdd(
    @Described("Id of the ingredient") String ingredient,
    @Described(value = "How much to add; below zero, how much to leave out", unit = "g")
        double grams) {}
