package tamis.plugin.intake.name;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** Which chocolate, cream or milk is meant where its share of cacao or fat is said. */
public final class Shares {
  public static final Table TABLE =
      TableReader.read(
          Shares.class,
          "/tamis/plugin/intake/shares.csv",
          "Foods that are told apart by their share of cacao or fat",
          List.of("family", "low_percent"));

  /** Foods whose name leaves the share open; another kind, such as milk chocolate, has its own. */
  private static final Map<String, Set<String>> OPEN =
      Map.of(
          "chocolate",
          Set.of(
              "chocolate-dark",
              "chocolate-dark-45-59",
              "chocolate-dark-70-85",
              "chocolate-semisweet"),
          "cream",
          Set.of(
              "cream-half-and-half",
              "cream-light",
              "cream-single",
              "cream-whipping",
              "cream-heavy",
              "cream-double"),
          "milk",
          Set.of("milk-whole", "milk-reduced-fat", "milk-skim"));

  private Shares() {}

  /** The id of the food that has the share; null if the food is of no family, or none has it. */
  public static @Nullable String with(Found food, double percent) {
    for (Row row : TABLE.rows()) {
      boolean has = percent >= row.number("low_percent") && percent <= row.number("high_percent");
      if (has && isOf(food, row.text("family"))) {
        return row.text("ingredient");
      }
    }
    return null;
  }

  private static boolean isOf(Found food, String family) {
    Set<String> open = OPEN.getOrDefault(family, Set.of());
    @Nullable Ingredient ingredient = food.ingredient();
    return ingredient == null
        ? food.candidates().stream().anyMatch(open::contains)
        : open.contains(ingredient.id());
  }
}
