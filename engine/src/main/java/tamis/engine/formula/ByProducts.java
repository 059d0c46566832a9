package tamis.engine.formula;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BillRow;
import tamis.engine.formula.Batch.ByProduct;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.table.Row;

/**
 * What is left over of eggs and fruit used in part. As many wholes are opened as the part that is
 * used most asks for; what the others do not use is left.
 */
public final class ByProducts {
  /** Below this nothing is worth keeping; it only stands for rounding in the division. */
  private static final double NOTHING_GRAMS = 1e-6;

  /** For each whole the grams of each of its parts. */
  private static final Map<String, Map<String, Double>> PARTS = partsByWhole();

  private ByProducts() {}

  static List<ByProduct> of(List<BillRow> bill) {
    Map<String, Double> used = new HashMap<>();
    bill.forEach(row -> used.merge(row.ingredient().id(), row.grams().typical(), Double::sum));
    return of(used);
  }

  /** What is left over when so many grams are used of each ingredient, by its id. */
  public static List<ByProduct> of(Map<String, Double> used) {
    List<ByProduct> left = new ArrayList<>();
    PARTS.forEach((whole, parts) -> left.addAll(left(whole, parts, used)));
    return left;
  }

  private static List<ByProduct> left(
      String whole, Map<String, Double> gramsOfPart, Map<String, Double> used) {
    double opened = opened(gramsOfPart, used);
    if (opened == 0) {
      return List.of();
    }
    List<ByProduct> left = new ArrayList<>();
    for (Map.Entry<String, Double> part : gramsOfPart.entrySet()) {
      double grams = opened * part.getValue() - used.getOrDefault(part.getKey(), 0.0);
      if (grams > NOTHING_GRAMS) {
        left.add(new ByProduct(part.getKey(), grams, whole));
      }
    }
    return left;
  }

  /** How many of each whole are opened for the grams that are used of its parts. */
  public static Map<String, Double> opened(Map<String, Double> used) {
    Map<String, Double> opened = new LinkedHashMap<>();
    PARTS.forEach((whole, parts) -> opened.put(whole, opened(parts, used)));
    return opened;
  }

  /** What an ingredient is a part of, such as the egg of a yolk; null if it is no such part. */
  public static @Nullable String wholeOf(String part) {
    return PARTS.entrySet().stream()
        .filter(whole -> whole.getValue().containsKey(part))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(null);
  }

  private static double opened(Map<String, Double> gramsOfPart, Map<String, Double> used) {
    double opened = 0;
    for (Map.Entry<String, Double> part : gramsOfPart.entrySet()) {
      opened = Math.max(opened, used.getOrDefault(part.getKey(), 0.0) / part.getValue());
    }
    return opened;
  }

  private static Map<String, Map<String, Double>> partsByWhole() {
    Map<String, Map<String, Double>> wholes = new LinkedHashMap<>();
    for (Row row : IngredientTables.BY_PRODUCTS.rows()) {
      Map<String, Double> parts =
          wholes.computeIfAbsent(row.text("whole"), whole -> new LinkedHashMap<>());
      parts.put(row.text("used"), row.number("used_g_per_whole"));
      @Nullable Double left = row.numberOrNull("left_g_per_whole");
      if (left != null) {
        parts.putIfAbsent(row.text("left"), left);
      }
    }
    return wholes;
  }
}
