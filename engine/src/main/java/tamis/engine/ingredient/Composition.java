package tamis.engine.ingredient;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a mix is made of: how much of each nutrient, and the part of the mix of which that is known.
 * What an ingredient does not tell is not known, never zero.
 *
 * @param grams mass of the mix
 * @param amounts the sum over the ingredients that tell it, in the nutrient's own unit
 * @param knownGrams mass of the ingredients that tell it
 */
public record Composition(
    double grams, Map<Nutrient, Double> amounts, Map<Nutrient, Double> knownGrams) {
  public Composition {
    amounts = Map.copyOf(amounts);
    knownGrams = Map.copyOf(knownGrams);
  }

  /** Nothing at all. */
  public static Composition empty() {
    return new Composition(0, Map.of(), Map.of());
  }

  /** So many grams of an ingredient. */
  public static Composition of(Ingredient ingredient, double grams) {
    return of(ingredient.per100g(), grams);
  }

  /** So many grams of what has this composition in 100 g. */
  public static Composition of(Map<Nutrient, Double> per100g, double grams) {
    Map<Nutrient, Double> amounts = new EnumMap<>(Nutrient.class);
    Map<Nutrient, Double> known = new EnumMap<>(Nutrient.class);
    per100g.forEach(
        (nutrient, value) -> {
          amounts.put(nutrient, value * grams / 100);
          known.put(nutrient, grams);
        });
    return new Composition(grams, amounts, known);
  }

  /** Both together. */
  public Composition plus(Composition other) {
    return new Composition(
        grams + other.grams, sum(amounts, other.amounts), sum(knownGrams, other.knownGrams));
  }

  /** So many times as much. */
  public Composition times(double factor) {
    return new Composition(grams * factor, scaled(amounts, factor), scaled(knownGrams, factor));
  }

  /** The mix after it gave off this mass of water, in baking or boiling. */
  public Composition withoutWater(double lostGrams) {
    double lost = Math.min(lostGrams, amount(Nutrient.WATER));
    double rest = grams == 0 ? 0 : (grams - lost) / grams;
    Map<Nutrient, Double> left = new EnumMap<>(Nutrient.class);
    left.putAll(amounts);
    left.computeIfPresent(Nutrient.WATER, (n, water) -> water - lost);
    return new Composition(grams - lost, left, scaled(knownGrams, rest));
  }

  /** How much there is, of what is known; 0 if nothing is. */
  public double amount(Nutrient nutrient) {
    return amounts.getOrDefault(nutrient, 0.0);
  }

  /** The part of the mass of which a nutrient is known, from 0 to 1. */
  public double known(Nutrient nutrient) {
    return grams == 0 ? 0 : knownGrams.getOrDefault(nutrient, 0.0) / grams;
  }

  /** How much there is in 100 g, counting only what is known; null if nothing is. */
  public @Nullable Double per100g(Nutrient nutrient) {
    @Nullable Double amount = amounts.get(nutrient);
    return amount == null || grams == 0 ? null : amount * 100 / grams;
  }

  private static Map<Nutrient, Double> sum(Map<Nutrient, Double> one, Map<Nutrient, Double> two) {
    Map<Nutrient, Double> sum = new EnumMap<>(Nutrient.class);
    sum.putAll(one);
    two.forEach((nutrient, value) -> sum.merge(nutrient, value, Double::sum));
    return sum;
  }

  private static Map<Nutrient, Double> scaled(Map<Nutrient, Double> map, double factor) {
    Map<Nutrient, Double> scaled = new EnumMap<>(Nutrient.class);
    map.forEach((nutrient, value) -> scaled.put(nutrient, value * factor));
    return scaled;
  }
}
