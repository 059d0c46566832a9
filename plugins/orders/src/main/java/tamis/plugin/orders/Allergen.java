package tamis.plugin.orders;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** An allergen as a regime names it; not how it came in. */
public record Allergen(
    @Described(value = "Group, as in ingredient documents", example = "tree-nut") String allergen,
    @Described(value = "Species it comes from, if it is known", example = "walnut")
        @Nullable String species,
    @Described(value = "How the regime names it", example = "walnut") String name) {}
