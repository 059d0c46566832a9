package tamis.plugin.stages;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.spi.Kitchen;
import tamis.engine.thermal.Proximates;

/**
 * What a part is made of, as heat sees it.
 *
 * @param proximates its composition
 * @param milkFat part of its fat that is milk fat, 0 to 1
 * @param cocoaFat part of its fat that is cocoa butter, 0 to 1
 * @param syrup whether it is sugar dissolved in water
 * @param egg whether there is egg in it
 */
record Makeup(Proximates proximates, double milkFat, double cocoaFat, boolean syrup, boolean egg) {
  /** What else than sugar and water a syrup may hold, in percent. */
  private static final double OTHER_IN_SYRUP = 2;

  private static final double LEAST_WATER_IN_SYRUP = 1;
  private static final Set<String> SUGARS = Set.of("sugar", "syrup", "water");

  static Makeup of(
      @Nullable IngredientRef ingredient,
      @Nullable Proximates composition,
      @Nullable FormulaRef formula,
      @Nullable FatKind fat,
      Kitchen kitchen) {
    if (ingredient != null) {
      return of(kitchen.ingredient(ingredient));
    }
    if (formula != null) {
      return of(kitchen.batch(formula, null));
    }
    if (composition == null) {
      throw new IllegalArgumentException("a part is an ingredient, a composition or a formula");
    }
    return new Makeup(
        composition,
        fat == FatKind.MILK ? 1 : 0,
        fat == FatKind.COCOA ? 1 : 0,
        isSyrup(composition),
        false);
  }

  static Makeup of(Ingredient ingredient) {
    Proximates made = Proximates.of(Composition.of(ingredient, 100));
    FatKind fat = fatOf(ingredient);
    boolean sugary = ingredient.kind() != null && SUGARS.contains(ingredient.kind());
    return new Makeup(
        made,
        fat == FatKind.MILK ? 1 : 0,
        fat == FatKind.COCOA ? 1 : 0,
        sugary && isSyrup(made),
        isEgg(ingredient));
  }

  static Makeup of(Batch batch) {
    return of(batch.bill());
  }

  /** What stays of all rows together. */
  static Makeup of(List<Batch.BillRow> bill) {
    Composition mix = Composition.empty();
    for (Batch.BillRow row : bill) {
      mix = mix.plus(Composition.of(row.ingredient(), row.remaining().typical()));
    }
    double fat = Math.max(1e-9, mix.amount(Nutrient.FAT));
    double milk = 0;
    double cocoa = 0;
    boolean egg = false;
    for (Batch.BillRow row : bill) {
      Ingredient ingredient = row.ingredient();
      double grams = Composition.of(ingredient, row.remaining().typical()).amount(Nutrient.FAT);
      milk += fatOf(ingredient) == FatKind.MILK ? grams : 0;
      cocoa += fatOf(ingredient) == FatKind.COCOA ? grams : 0;
      egg |= isEgg(ingredient);
    }
    Proximates made = Proximates.of(mix);
    double sugars = mix.amount(Nutrient.SUGARS);
    boolean sugary = sugars > 0.95 * mix.amount(Nutrient.CARBOHYDRATE);
    return new Makeup(made, milk / fat, cocoa / fat, sugary && isSyrup(made), egg);
  }

  double fatPercent() {
    return proximates.fat() == null ? 0 : proximates.fat();
  }

  double waterPercent() {
    return proximates.water() == null ? 0 : proximates.water();
  }

  /** Percent of sugar in what is a syrup. */
  double brix() {
    return 100 - waterPercent() * 100 / proximates.sum();
  }

  private static boolean isSyrup(Proximates made) {
    double water = made.water() == null ? 0 : made.water();
    double carbohydrate = made.carbohydrate() == null ? 0 : made.carbohydrate();
    return water >= LEAST_WATER_IN_SYRUP
        && carbohydrate > 0
        && made.sum() - water - carbohydrate <= OTHER_IN_SYRUP;
  }

  private static FatKind fatOf(Ingredient ingredient) {
    String id = ingredient.id();
    boolean cocoa =
        (id.startsWith("chocolate") && !id.contains("compound")) || id.startsWith("cocoa");
    if (cocoa || id.equals("gianduja")) {
      return FatKind.COCOA;
    }
    String kind = String.valueOf(ingredient.kind());
    return id.startsWith("butter-") || kind.equals("dairy") || kind.equals("cheese")
        ? FatKind.MILK
        : FatKind.LIQUID;
  }

  private static boolean isEgg(Ingredient ingredient) {
    return "egg".equals(ingredient.kind());
  }
}
