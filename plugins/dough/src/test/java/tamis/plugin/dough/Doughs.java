package tamis.plugin.dough;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/** Writes formulas as a caller would. */
final class Doughs {
  private static final List<String> OTHERS =
      List.of("water", "milk-whole", "egg", "butter-unsalted", "salt", "yeast-instant", "honey");

  private Doughs() {}

  /** From {@code ingredient=quantity; ingredient=quantity}. */
  static Map<String, Object> formula(String lines) {
    Map<String, Object> formula = new LinkedHashMap<>();
    List<Map<String, Object>> list = new ArrayList<>();
    for (String line : lines.split(";")) {
      String[] sides = line.split("=");
      Map<String, Object> entry = new LinkedHashMap<>();
      entry.put("ingredient", sides[0].strip());
      entry.put("quantity", sides[1].strip());
      list.add(entry);
    }
    formula.put("measures", "metric");
    formula.put("lines", list);
    return formula;
  }

  @SuppressWarnings("unchecked")
  static List<Map<String, Object>> lines(Map<String, Object> formula) {
    return (List<Map<String, Object>>) formula.get("lines");
  }

  /** Adds a line that is a formula. */
  static Map<String, Object> with(
      Map<String, Object> formula, Map<String, Object> part, String quantity, String role) {
    Map<String, Object> line = new LinkedHashMap<>();
    line.put("formula", part);
    line.put("quantity", quantity);
    line.put("role", role);
    lines(formula).add(line);
    return formula;
  }

  /** The input; {@code to} as {@code mass=3 kg}, or null. */
  static Map<String, Object> input(Map<String, Object> formula, String to) {
    Map<String, Object> input = new LinkedHashMap<>();
    input.put("formula", formula);
    if (to != null) {
      String[] sides = to.split("=");
      Object size = sides[0].equals("factor") ? (Object) Double.valueOf(sides[1]) : sides[1];
      input.put("to", Map.of(sides[0], size));
    }
    return input;
  }

  /** A dough of one to three flours on a preferment, with some of the other ingredients. */
  static Map<String, Object> random(Random random) {
    StringBuilder lines = new StringBuilder("bread-flour=" + grams(random, 500));
    if (random.nextBoolean()) {
      lines.append("; rye-flour=").append(grams(random, 300));
    }
    if (random.nextBoolean()) {
      lines.append("; whole-wheat-flour=").append(random.nextInt(1, 40)).append(" %");
    }
    for (String other : OTHERS) {
      if (random.nextInt(3) > 0) {
        lines.append("; ").append(other).append("=");
        lines.append(random.nextBoolean() ? grams(random, 200) : random.nextInt(1, 70) + " %");
      }
    }
    Map<String, Object> sour = formula("rye-flour=100 %; water=" + random.nextInt(50, 120) + " %");
    return with(formula(lines.toString()), sour, grams(random, 400), "preferment");
  }

  private static String grams(Random random, double about) {
    return String.format(Locale.ROOT, "%.2f g", about * (0.5 + random.nextDouble()));
  }
}
