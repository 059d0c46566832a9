package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Fraction;
import tamis.engine.record.Described;

/** A part of a compound ingredient, as its label lists it. */
public record ConsistsOf(
    @Described(value = "Name of the part", example = "cocoa mass", most = 200) String name,
    @Described(value = "Its part of the mass, if known", example = "45 %")
        @Nullable Fraction part) {}
