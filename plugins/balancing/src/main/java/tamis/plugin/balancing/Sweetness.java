package tamis.plugin.balancing;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.quantity.Spread;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Sweetness as grams of sucrose that taste as sweet: the sum of the sugars times their relative
 * sweetness. Where the parts of the sugars are not known there is no figure, but for milk without
 * added sugars, whose sugar is lactose.
 */
final class Sweetness {
  static final Table TABLE =
      TableReader.read(
          Sweetness.class,
          "/tamis/plugin/balancing/relative-sweetness.csv",
          "How sweet sugars are beside sucrose",
          List.of("sugar"));

  private static final List<Nutrient> SUGARS =
      List.of(
          Nutrient.SUCROSE,
          Nutrient.GLUCOSE,
          Nutrient.FRUCTOSE,
          Nutrient.MALTOSE,
          Nutrient.LACTOSE,
          Nutrient.GALACTOSE);

  /** Analyses of single sugars and of all of them together differ by so much. */
  private static final double ALL_BUT = 0.9;

  private Sweetness() {}

  /** Of 100 g, or null if it is not known. */
  static @Nullable Spread of(Ingredient ingredient) {
    @Nullable Double sugars = ingredient.known(Nutrient.SUGARS);
    @Nullable Double polyols = ingredient.per100g(Nutrient.POLYOLS);
    if (sugars == null || (polyols != null && polyols > 0)) {
      return null;
    }
    Spread sum = Spread.zero();
    double found = 0;
    for (Nutrient sugar : SUGARS) {
      @Nullable Double grams = ingredient.per100g(sugar);
      if (grams != null) {
        found += grams;
        sum = sum.plus(relative(sugar).times(grams));
      }
    }
    if (sugars == 0) {
      return Spread.zero();
    }
    if (found >= sugars * ALL_BUT) {
      return sum.times(Math.min(1 / ALL_BUT, Math.max(1, sugars / found)));
    }
    return isPlainMilk(ingredient) ? relative(Nutrient.LACTOSE).times(sugars) : null;
  }

  private static boolean isPlainMilk(Ingredient ingredient) {
    @Nullable Double added = ingredient.per100g(Nutrient.ADDED_SUGARS);
    return ingredient.contains().stream().anyMatch(fact -> fact.allergen() == Allergen.MILK)
        && MilkSolids.isMilk(ingredient)
        && added != null
        && added == 0;
  }

  private static Spread relative(Nutrient sugar) {
    Row row = Objects.requireNonNull(TABLE.row(sugar.name().toLowerCase(Locale.ROOT)));
    return new Spread(row.number("low"), row.number("typical"), row.number("high")).times(0.01);
  }
}
