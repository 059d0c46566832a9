package example.icecreammix;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/** An ingredient in the mix, its grams and where the caller named it: what it brings. */
record MixPart(Ingredient ingredient, double grams, String pointer) {
  @Nullable Double of(Nutrient nutrient) {
    Double per = ingredient.per100g(nutrient);
    return per == null ? null : per * grams / 100;
  }

  double orNothing(Nutrient nutrient) {
    Double amount = of(nutrient);
    return amount == null ? 0 : amount;
  }

  boolean holds(Allergen allergen) {
    return ingredient.contains().stream().anyMatch(fact -> fact.allergen() == allergen);
  }

  // In the order of the nutrients: sources are listed as they are cited, alike at every start.
  private static final Map<Nutrient, String> SUGARS =
      new EnumMap<>(
          Map.of(
              Nutrient.SUCROSE, "sucrose",
              Nutrient.GLUCOSE, "glucose",
              Nutrient.FRUCTOSE, "fructose",
              Nutrient.GALACTOSE, "galactose",
              Nutrient.LACTOSE, "lactose",
              Nutrient.MALTOSE, "maltose"));

  /** The milk solids not fat of a part, 0 where there is no milk, null where it cannot be told. */
  @Nullable Double milkSolids(Notes notes, String place) {
    Row row = MixTables.MILK_SOLIDS.row(ingredient.id());
    if (row != null) {
      notes.cite(row, place + "/milkSolidsNotFatGrams");
      return grams * row.number("solids_not_fat_g") / 100;
    }
    if (!holds(Allergen.MILK)) {
      return 0.0;
    }
    Double water = of(Nutrient.WATER);
    Double fat = of(Nutrient.FAT);
    return isPlainMilk() && water != null && fat != null
        ? Double.valueOf(Math.max(0, grams - water - fat))
        : null;
  }

  boolean isPlainMilk() {
    Double added = ingredient.per100g(Nutrient.ADDED_SUGARS);
    String kind = ingredient.kind();
    return holds(Allergen.MILK)
        && added != null
        && added == 0
        && ("dairy".equals(kind) || "fat".equals(kind) || "cheese".equals(kind));
  }

  double sweetener(@Nullable Double msnf) {
    Row syrup = MixTables.SYRUPS.row(ingredient.id());
    if (syrup != null) {
      return grams * syrup.number("sweetener_g") / 100;
    }
    if (isPlainMilk() || ingredient.id().equals("lactose")) {
      return 0;
    }
    double lactose = msnf == null ? 0 : msnf * MixTables.constant("lactose-share").number("value");
    return Math.max(0, orNothing(Nutrient.SUGARS) - lactose)
        + orNothing(Nutrient.POLYOLS);
  }

  @Nullable Double equivalent(@Nullable Double msnf, Notes notes, String place) {
    String at = place + "/sucroseEquivalentGrams";
    Row syrup = MixTables.SYRUPS.row(ingredient.id());
    if (syrup != null) {
      notes.cite(syrup, at);
      return grams * syrup.number("sucrose_equivalent_g") / 100;
    }
    Double all = of(Nutrient.SUGARS);
    if (all == null) {
      return null;
    }
    double told = 0;
    double sum = 0;
    for (Map.Entry<Nutrient, String> sugar : SUGARS.entrySet()) {
      double amount = orNothing(sugar.getKey());
      told += amount;
      sum += counted(sugar.getValue(), amount, notes, at);
    }
    sum += counted("other-sugars", Math.max(0, all - told), notes, at);
    sum += counted("polyols", orNothing(Nutrient.POLYOLS), notes, at);
    sum += counted("alcohol", orNothing(Nutrient.ALCOHOL), notes, at);
    Row own = MixTables.MILK_SOLIDS.row(ingredient.id());
    boolean saltOfItsOwn = own == null ? msnf == null || msnf == 0 : own.yes("salted");
    if (saltOfItsOwn) {
      double sodium = orNothing(Nutrient.SODIUM) / 1000;
      if (sodium > 0) {
        notes.cite(MixTables.constant("salt-of-sodium"), at);
      }
      sum += counted("salt", sodium * MixTables.constant("salt-of-sodium").number("value"), notes, at);
    }
    return sum;
  }

  private static double counted(String solute, double amount, Notes notes, String at) {
    if (amount < 1e-6) {
      return 0;
    }
    Row row = MixTables.SOLUTES.row(solute);
    notes.cite(row, at);
    return amount * row.number("sucrose_equivalent");
  }
}
