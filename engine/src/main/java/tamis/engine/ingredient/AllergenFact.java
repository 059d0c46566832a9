package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** That an ingredient contains, or may contain, an allergen. */
public record AllergenFact(
    @Described(value = "The allergen", example = "tree-nut") Allergen allergen,
    @Described(value = "The species it comes from", example = "almond", most = 100)
        @Nullable String species) {}
