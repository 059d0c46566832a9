package tamis.plugin.nutrition;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** An allergen as a regime names it, and the ways by which it came in. */
public record NamedAllergen(
    @Described(value = "Group, as in ingredient documents", example = "tree-nut") String allergen,
    @Described(value = "Species it comes from, if it is known", example = "almond")
        @Nullable String species,
    @Described(value = "How the regime names it", example = "almond") String name,
    @Described(value = "Whether it must be named or is recommended", example = "mandatory")
        String standing,
    @Described("From which amount on it is named") @Nullable String limit,
    @Described(value = "GS1 AllergenTypeCode", example = "SA") @Nullable String gs1,
    @Described("Ways by which it came in, from the outermost sub-formula to the ingredient")
        List<String> via,
    @Described("The lines it came in by, as JSON Pointers from the formula") List<String> paths) {
  public NamedAllergen {
    via = List.copyOf(via);
    paths = List.copyOf(paths);
  }

  /** What tells it from others. */
  String key() {
    return allergen + "/" + (species == null ? "" : species) + "/" + name;
  }
}
