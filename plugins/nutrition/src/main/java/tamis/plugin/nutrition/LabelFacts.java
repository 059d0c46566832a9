package tamis.plugin.nutrition;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;

/**
 * What 100 g of an ingredient bring to a label: carbohydrate and energy as the regime counts them,
 * vitamins, minerals and alcohol as cooking leaves them.
 *
 * @param specific US energy by each food's own factors instead of the general ones
 */
record LabelFacts(LabelRegime regime, boolean specific, Retained retained) {
  private static final double MOST_KCAL = 900; // of fat, EU Annex XIV and 21 CFR 101.9(c)(1)(i)
  private static final double MOST_KJ = 3700;

  /** What the document tells, or what follows from it. */
  Map<Nutrient, Double> known(Ingredient ingredient) {
    Map<Nutrient, Double> facts = new EnumMap<>(Nutrient.class);
    for (Nutrient nutrient : Nutrient.values()) {
      put(facts, nutrient, left(ingredient, nutrient, ingredient.known(nutrient)));
    }
    put(facts, Nutrient.CARBOHYDRATE, carbohydrate(ingredient));
    put(facts, Nutrient.ENERGY_KCAL, kcal(ingredient));
    put(facts, Nutrient.ENERGY_KJ, kilojoules(ingredient));
    return facts;
  }

  /** The same, with the most it can hold of what the document does not tell. */
  Map<Nutrient, Double> most(Ingredient ingredient, Map<Nutrient, Double> known) {
    Map<Nutrient, Double> facts = new EnumMap<>(Nutrient.class);
    for (Nutrient nutrient : Nutrient.values()) {
      facts.put(nutrient, known.getOrDefault(nutrient, most(ingredient, nutrient)));
    }
    return facts;
  }

  private static double most(Ingredient ingredient, Nutrient nutrient) {
    return switch (nutrient) {
      case ENERGY_KCAL -> MOST_KCAL;
      case ENERGY_KJ -> MOST_KJ;
      case CARBOHYDRATE -> {
        @Nullable Double withFibre = ingredient.known(Nutrient.CARBOHYDRATE);
        yield withFibre == null ? 100 : withFibre;
      }
      default -> ingredient.most(nutrient);
    };
  }

  private @Nullable Double left(Ingredient ingredient, Nutrient nutrient, @Nullable Double amount) {
    if (amount == null || amount == 0) {
      return amount;
    }
    return amount * retained.part(ingredient, nutrient);
  }

  /** US: by difference, with fibre. EU: without fibre, with polyols (Annex I). */
  private @Nullable Double carbohydrate(Ingredient ingredient) {
    @Nullable Double all = ingredient.known(Nutrient.CARBOHYDRATE);
    if (regime.isAmerican() || all == null) {
      return all;
    }
    @Nullable Double fibre = ingredient.known(Nutrient.FIBRE);
    return fibre == null ? null : (Double) Math.max(0, all - fibre);
  }

  private @Nullable Double kcal(Ingredient ingredient) {
    if (!specific) {
      @Nullable Map<String, Double> parts = parts(ingredient);
      return parts == null ? null : EnergyFactors.kcal(regime.figures(), parts);
    }
    return EnergyFactors.own(ingredient);
  }

  private @Nullable Double kilojoules(Ingredient ingredient) {
    if (!specific) {
      @Nullable Map<String, Double> parts = parts(ingredient);
      return parts == null ? null : EnergyFactors.kilojoules(regime.figures(), parts);
    }
    return ingredient.known(Nutrient.ENERGY_KJ);
  }

  /**
   * Grams that energy is counted from; null if one is not told. Carbohydrate by difference holds
   * polyols that are not told apart, and foods that are no drinks have no alcohol unless they say.
   */
  private @Nullable Map<String, Double> parts(Ingredient ingredient) {
    @Nullable Double carbohydrate = carbohydrate(ingredient);
    @Nullable Double protein = ingredient.known(Nutrient.PROTEIN);
    @Nullable Double fat = ingredient.known(Nutrient.FAT);
    @Nullable Double alcohol =
        left(ingredient, Nutrient.ALCOHOL, ingredient.known(Nutrient.ALCOHOL));
    boolean drink = "alcohol".equals(ingredient.kind());
    if (carbohydrate == null || protein == null || fat == null || (alcohol == null && drink)) {
      return null;
    }
    Map<String, Double> parts = new LinkedHashMap<>();
    parts.put("protein", protein);
    parts.put("fat", fat);
    parts.put("alcohol", alcohol == null ? 0.0 : alcohol);
    if (regime.isAmerican()) {
      parts.put("carbohydrate", carbohydrate);
      return parts;
    }
    @Nullable Double polyols = ingredient.known(Nutrient.POLYOLS);
    double sweet = polyols == null ? 0 : Math.min(polyols, carbohydrate);
    @Nullable Double fibre = ingredient.known(Nutrient.FIBRE);
    parts.put("polyols", sweet);
    parts.put("carbohydrate", carbohydrate - sweet);
    parts.put("fibre", fibre == null ? 0.0 : fibre);
    return parts;
  }

  private static void put(Map<Nutrient, Double> facts, Nutrient nutrient, @Nullable Double value) {
    if (value == null) {
      facts.remove(nutrient);
    } else {
      facts.put(nutrient, value);
    }
  }
}
