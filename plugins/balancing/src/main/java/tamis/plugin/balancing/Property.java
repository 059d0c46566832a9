package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.quantity.Spread;

/**
 * A property of a mix: what 100 g of an ingredient bring of it adds up by mass.
 *
 * @param name as callers write it
 * @param unit of the amount in 100 g
 */
record Property(String name, String unit) {
  static final String SWEETNESS = "sweetness";
  private static final String SOLIDS = "solids";
  private static final String MILK_SOLIDS = "milk-solids-not-fat";
  private static final Map<String, Nutrient> NUTRIENTS = nutrients();

  /** Those that are told of every mix, if they are known. */
  static final List<Property> USUAL =
      List.of(
          of("water"),
          of(SOLIDS),
          of("sugar"),
          of("fat"),
          of(MILK_SOLIDS),
          of("protein"),
          of(SWEETNESS),
          of("alcohol"));

  private static Map<String, Nutrient> nutrients() {
    Map<String, Nutrient> nutrients = new LinkedHashMap<>();
    nutrients.put("sugar", Nutrient.SUGARS);
    for (Nutrient nutrient : Nutrient.values()) {
      nutrients.put(nutrient.toString(), nutrient);
    }
    return nutrients;
  }

  static Property of(String name) {
    Nutrient nutrient = NUTRIENTS.get(name);
    if (nutrient != null) {
      return new Property(name, nutrient.unit());
    }
    return new Property(name, isDerived(name) ? "g" : "");
  }

  private static boolean isDerived(String name) {
    return name.equals(SOLIDS) || name.equals(MILK_SOLIDS) || name.equals(SWEETNESS);
  }

  boolean isKnownName() {
    return NUTRIENTS.containsKey(name) || isDerived(name);
  }

  static List<String> names() {
    List<String> names = new ArrayList<>(List.of(SOLIDS, MILK_SOLIDS, SWEETNESS));
    names.addAll(NUTRIENTS.keySet());
    return names;
  }

  /** {@code %} of a mass in a mass; else the unit in 100 g. */
  String per100() {
    return unit.equals("g") ? "%" : (unit + " in 100 g").strip();
  }

  /** Of 100 g of an ingredient of the tables, or null if it is not known. */
  @Nullable Spread of(Ingredient ingredient) {
    if (name.equals(SWEETNESS)) {
      return Sweetness.of(ingredient);
    }
    @Nullable Double value =
        switch (name) {
          case SOLIDS -> solids(ingredient.per100g(Nutrient.WATER), alcohol(ingredient));
          case MILK_SOLIDS -> MilkSolids.of(ingredient);
          default -> {
            Nutrient nutrient = NUTRIENTS.get(name);
            yield nutrient == null ? null : ingredient.known(nutrient);
          }
        };
    return value == null ? null : Spread.exactly(value);
  }

  /** Where a document does not tell alcohol, what it names as one still may hold some. */
  private static @Nullable Double alcohol(Ingredient ingredient) {
    @Nullable Double told = ingredient.per100g(Nutrient.ALCOHOL);
    return told == null && !"alcohol".equals(ingredient.kind()) ? (Double) 0.0 : told;
  }

  /** Of a composition that is given: as it is told, or as it follows from water. */
  @Nullable Double of(Map<String, Double> composition) {
    @Nullable Double told = composition.get(name);
    if (told == null && name.equals("sugar")) {
      return composition.get("sugars");
    }
    if (told == null && name.equals(SOLIDS)) {
      return solids(composition.get("water"), composition.getOrDefault("alcohol", 0.0));
    }
    return told;
  }

  private static @Nullable Double solids(@Nullable Double water, @Nullable Double alcohol) {
    return water == null || alcohol == null ? null : (Double) Math.max(0, 100 - water - alcohol);
  }
}
