package tamis.plugin.balancing;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;

/**
 * Milk solids not fat: of milk, cream, powders and butter what is neither water nor fat nor added
 * sugar nor added salt (definition of the dairy trade). What holds no milk holds none of them; what
 * holds milk among other things is not known.
 */
final class MilkSolids {
  /** Salt of 1 g of sodium (58.44 / 22.99), and sodium that milk itself brings to butter. */
  private static final double SALT_OF_SODIUM = 2.542;

  private static final double OWN_SODIUM_MG = 50;

  private MilkSolids() {}

  static boolean isMilk(Ingredient ingredient) {
    return "dairy".equals(ingredient.kind()) || isButter(ingredient);
  }

  private static boolean isButter(Ingredient ingredient) {
    return "fat".equals(ingredient.kind()) && holdsMilk(ingredient);
  }

  private static boolean holdsMilk(Ingredient ingredient) {
    return ingredient.contains().stream().anyMatch(fact -> fact.allergen() == Allergen.MILK);
  }

  /** Of 100 g, or null if it is not known. */
  static @Nullable Double of(Ingredient ingredient) {
    if (!holdsMilk(ingredient)) {
      return 0.0;
    }
    @Nullable Double water = ingredient.per100g(Nutrient.WATER);
    @Nullable Double fat = ingredient.per100g(Nutrient.FAT);
    @Nullable Double added = ingredient.per100g(Nutrient.ADDED_SUGARS);
    added = added == null ? ingredient.per100g(Nutrient.SUCROSE) : added;
    if (!isMilk(ingredient) || water == null || fat == null || added == null) {
      return null;
    }
    @Nullable Double sodium = ingredient.per100g(Nutrient.SODIUM);
    double salt =
        isButter(ingredient) && sodium != null
            ? Math.max(0, sodium - OWN_SODIUM_MG) / 1000 * SALT_OF_SODIUM
            : 0;
    return Math.max(0, 100 - water - fat - added - salt);
  }
}
