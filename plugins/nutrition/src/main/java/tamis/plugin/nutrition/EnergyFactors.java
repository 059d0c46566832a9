package tamis.plugin.nutrition;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.table.Row;

/**
 * Energy by factors. Two ways are kept apart: the factors of a regime, kJ and kcal each by its own
 * (EU 1169/2011 Annex XIV; 21 CFR 101.9(c)(1)(i)(B)), and each food's own factors, as its table has
 * them. kJ are never kcal times 4.184.
 */
final class EnergyFactors {
  /** What the source of the built-in foods counts for a gram of alcohol, in all of them. */
  private static final double OWN_ALCOHOL_KCAL = 6.93;

  private EnergyFactors() {}

  /** kcal of so many grams of each part, by the regime. */
  static double kcal(String regime, Map<String, Double> grams) {
    return sum(regime, grams, "kcal_per_g");
  }

  /** kJ of so many grams of each part, by the regime. */
  static double kilojoules(String regime, Map<String, Double> grams) {
    return sum(regime, grams, "kj_per_g");
  }

  private static double sum(String regime, Map<String, Double> grams, String column) {
    double sum = 0;
    for (Map.Entry<String, Double> part : grams.entrySet()) {
      @Nullable Row row = FigureTables.ENERGY.row(regime + "/" + part.getKey());
      if (row == null) {
        throw new IllegalStateException(regime + " has no energy factor of " + part.getKey());
      }
      sum += row.number(column) * part.getValue();
    }
    return sum;
  }

  /** kcal of 100 g by the food's own factors, else as its document says; null if it does not. */
  static @Nullable Double own(Ingredient ingredient) {
    @Nullable Double byFactors = byOwnFactors(ingredient);
    return byFactors == null ? ingredient.known(Nutrient.ENERGY_KCAL) : byFactors;
  }

  /** kcal of 100 g by the food's own factors; null if the table does not print all three. */
  static @Nullable Double byOwnFactors(Ingredient ingredient) {
    if (!ingredient.equals(ReferenceIngredients.standard().byId(ingredient.id()))) {
      return null;
    }
    @Nullable Row row = IngredientTables.INGREDIENTS.row(ingredient.id());
    @Nullable Double protein = product(ingredient, row, Nutrient.PROTEIN, "protein_kcal_per_g");
    @Nullable Double fat = product(ingredient, row, Nutrient.FAT, "fat_kcal_per_g");
    @Nullable Double carbohydrate =
        product(ingredient, row, Nutrient.CARBOHYDRATE, "carbohydrate_kcal_per_g");
    if (protein == null || fat == null || carbohydrate == null) {
      return null;
    }
    @Nullable Double alcohol = ingredient.known(Nutrient.ALCOHOL);
    return protein + fat + carbohydrate + (alcohol == null ? 0 : OWN_ALCOHOL_KCAL * alcohol);
  }

  private static @Nullable Double product(
      Ingredient ingredient, @Nullable Row row, Nutrient nutrient, String column) {
    @Nullable Double grams = ingredient.known(nutrient);
    @Nullable Double factor = row == null ? null : row.numberOrNull(column);
    return grams == null || factor == null ? null : grams * factor;
  }
}
