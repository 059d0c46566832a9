package tamis.plugin.dough;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/**
 * The water of a dough: that of water lines, and that inside of other ingredients by their
 * composition. The flour's own water is never counted. Only what stays in the dough counts.
 *
 * @param lines grams in water lines
 * @param total grams with that inside milk, egg, butter and the like
 * @param boiledOff whether some of the water lines did not stay
 * @param unknown ids of ingredients of which the composition does not tell the water
 */
record Water(double lines, double total, boolean boiledOff, Set<String> unknown) {

  static Water of(List<BatchLine> joined, Notes notes) {
    double lines = 0;
    double inside = 0;
    boolean boiledOff = false;
    Set<String> unknown = new LinkedHashSet<>();
    for (BatchLine line : joined) {
      double grams = line.grams().typical() * line.remains();
      @Nullable Double share = line.ingredient().per100g(Nutrient.WATER);
      if (isWater(line.ingredient())) {
        lines += grams;
        boiledOff |= line.remains() < 1;
      } else if (!line.flour() && share != null) {
        inside += grams * share / 100;
        cite(line.ingredient(), notes);
      } else if (!line.flour() && grams > 0) {
        unknown.add(line.ingredient().id());
      }
    }
    return new Water(lines, lines + inside, boiledOff, unknown);
  }

  private static boolean isWater(Ingredient ingredient) {
    return "water".equals(ingredient.kind()) || ingredient.id().equals("water");
  }

  /** Cites the built-in composition, or the shop's own document where it says something else. */
  private static void cite(Ingredient ingredient, Notes notes) {
    @Nullable Row row = IngredientTables.INGREDIENTS.row(ingredient.id());
    String source =
        ingredient.source() == null ? "the ingredient's own document" : ingredient.source();
    if (row != null && source.equals(row.source() + ", " + row.text("locator"))) {
      notes.cite(row, "/totalWaterPercent");
    } else {
      notes.cite("ingredients", ingredient.id(), source, null, null, "/totalWaterPercent");
    }
  }
}
