package tamis.api.representation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Described;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/**
 * Grams of each ingredient over all lines of a result, by the ingredient's id, so that a cell finds
 * an ingredient without knowing in which line it stands.
 */
final class Bill {
  static final String NAME = "bill";

  /** What an ingredient comes to, in the form of a result's own bill. */
  public record Weighed(@Described(value = "Mass over all lines", unit = "g") double grams) {
    Weighed plus(Weighed other) {
      return new Weighed(grams + other.grams);
    }
  }

  private Bill() {}

  /** Whether results of this shape get a bill: they have such lines and no bill of their own. */
  static boolean isAddedTo(Shape shape) {
    return shape.component(NAME) == null && lines(shape) != null;
  }

  static Map<String, Object> schema() {
    return Tree.of(
        "type",
        "object",
        "additionalProperties",
        Tree.of(
            "type",
            "object",
            "properties",
            Tree.of("grams", Tree.of("type", "number", "description", "In g")),
            "required",
            List.of("grams")),
        "description",
        "Grams of each ingredient over all lines");
  }

  /** The bill of a result that gets one. */
  static Map<String, Weighed> of(Record result) {
    Map<String, Weighed> bill = new LinkedHashMap<>();
    @Nullable Component lines = lines(Shape.of(result.getClass()));
    if (lines != null && lines.of(result) instanceof List<?> list) {
      list.forEach(line -> add(bill, (Record) line));
    }
    return bill;
  }

  private static void add(Map<String, Weighed> bill, Record line) {
    Shape shape = Shape.of(line.getClass());
    @Nullable Object ingredient = value(shape, "ingredient", line);
    @Nullable Object grams = value(shape, "grams", line);
    if (ingredient != null && grams != null) {
      Weighed weighed = new Weighed(((Number) grams).doubleValue());
      bill.merge(ingredient.toString(), weighed, Weighed::plus);
    }
  }

  private static @Nullable Object value(Shape shape, String name, Record line) {
    @Nullable Component component = shape.component(name);
    return component == null ? null : component.of(line);
  }

  private static @Nullable Component lines(Shape shape) {
    @Nullable Component lines = shape.component("lines");
    if (lines != null
        && lines.form() instanceof Form.Listed listed
        && listed.entry() instanceof Form.Nested nested) {
      @Nullable Component ingredient = nested.shape().component("ingredient");
      @Nullable Component grams = nested.shape().component("grams");
      boolean weighed = grams != null && grams.form() instanceof Form.Numeric;
      return ingredient != null && weighed ? lines : null;
    }
    return null;
  }
}
