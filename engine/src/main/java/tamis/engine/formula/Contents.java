package tamis.engine.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;

/**
 * What is in a finished batch: of each line the grams that went in, less what was strained off and
 * what stayed in bowls. Baking takes water only, so it changes no line but the mass they are in.
 *
 * @param entries every ingredient line of every part, those "as needed" with no mass
 * @param grams mass of the finished batch
 */
public record Contents(List<Entry> entries, double grams) {
  /**
   * One line.
   *
   * @param line as it stands in the batch
   * @param grams what of it is in the finished batch, before it dries
   * @param through the sub-formulas it came in by, outermost first
   */
  public record Entry(BatchLine line, double grams, List<Part> through) {
    public Entry {
      through = List.copyOf(through);
    }
  }

  public Contents {
    entries = List.copyOf(entries);
  }

  public static Contents of(Batch batch) {
    List<Entry> entries = new ArrayList<>();
    gather(batch.root(), 1, List.of(), entries);
    return new Contents(entries, batch.root().finished().typical());
  }

  private static void gather(Part part, double share, List<Part> through, List<Entry> entries) {
    double inside = share * part.formula().yieldOrNothing().afterMakeUp();
    for (BatchLine line : part.lines()) {
      double grams = line.grams().typical() * line.line().remaining() * inside;
      entries.add(new Entry(line, grams, through));
    }
    for (Part inner : part.parts()) {
      List<Part> deeper = new ArrayList<>(through);
      deeper.add(inner);
      gather(inner, inside * part.lineOf(inner).remaining(), deeper, entries);
    }
  }

  /** What it is made of, before any of its water is baked off. */
  public Composition composition() {
    return composition(Ingredient::per100g);
  }

  /** The same from facts of 100 g of an ingredient that a caller works out. */
  public Composition composition(Function<Ingredient, Map<Nutrient, Double>> per100g) {
    Map<String, Double> grams = new LinkedHashMap<>();
    Map<String, Ingredient> ingredients = new LinkedHashMap<>();
    for (Entry entry : entries) {
      String id = entry.line().ingredient().id();
      grams.merge(id, entry.grams(), Double::sum);
      ingredients.put(id, entry.line().ingredient());
    }
    Composition mix = Composition.empty();
    for (Map.Entry<String, Ingredient> one : ingredients.entrySet()) {
      double share = grams.getOrDefault(one.getKey(), 0.0);
      if (share > 0) {
        mix = mix.plus(Composition.of(per100g.apply(one.getValue()), share));
      }
    }
    return mix;
  }

  /** Mass of all that went in, before any of its water is baked off. */
  public double mixedGrams() {
    return entries.stream().mapToDouble(Entry::grams).sum();
  }
}
