package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.ingredient.Ingredient;

/**
 * One entry of a list of ingredients: a food, or a compound with a list of its own.
 *
 * @param name of a compound
 * @param ingredient or null for a compound
 * @param grams as it is used
 * @param within the entries of a compound, heaviest first
 */
record ListNode(String name, @Nullable Ingredient ingredient, double grams, List<ListNode> within) {
  private static final String WATER = "water";

  /**
   * The entries of a formula. Doughs fermented or soaked beforehand are the same dough; other parts
   * are compound ingredients, unless all are to be {@code dispersed}.
   */
  static List<ListNode> of(Batch batch, boolean dispersed) {
    Part root = batch.root();
    double share = root.formula().yieldOrNothing().afterMakeUp();
    return entries(root, share, dispersed);
  }

  private static List<ListNode> entries(Part part, double share, boolean dispersed) {
    Map<String, ListNode> entries = new LinkedHashMap<>();
    gather(part, share, dispersed, entries);
    List<ListNode> sorted = new ArrayList<>(entries.values());
    sorted.sort(Comparator.comparingDouble(ListNode::grams).reversed());
    return List.copyOf(sorted);
  }

  private static void gather(
      Part part, double share, boolean dispersed, Map<String, ListNode> entries) {
    for (BatchLine line : part.lines()) {
      double grams = line.grams().typical() * line.line().remaining() * share;
      String id = line.ingredient().id();
      add(entries, "ingredient " + id, new ListNode(id, line.ingredient(), grams, List.of()));
    }
    for (Part inner : part.parts()) {
      double used = share * remaining(part, inner);
      double inside = used * inner.formula().yieldOrNothing().afterMakeUp();
      if (dispersed || inner.role().joins()) {
        gather(inner, inside, dispersed, entries);
      } else {
        String name = inner.formula().name();
        double grams = inner.finished().typical() * used;
        add(
            entries,
            "formula " + name,
            new ListNode(name, null, grams, entries(inner, inside, dispersed)));
      }
    }
  }

  private static double remaining(Part part, Part inner) {
    String path = inner.path();
    int index = Integer.parseInt(path.substring(path.lastIndexOf('/') + 1));
    return part.formula().lines().get(index).remaining();
  }

  private static void add(Map<String, ListNode> entries, String key, ListNode node) {
    entries.merge(
        key,
        node,
        (a, b) -> new ListNode(a.name(), a.ingredient(), a.grams() + b.grams(), a.within()));
  }

  boolean isWater() {
    return ingredient != null && WATER.equals(ingredient.kind());
  }

  ListNode weighing(double other) {
    return new ListNode(name, ingredient, other, within);
  }
}
