package tamis.api.representation;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Described;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/** Meaning, bounds and example of a component, in the words of a schema. */
final class SchemaWords {
  private SchemaWords() {}

  /** The meaning, with the unit, and with bounds that a schema cannot say. */
  static String description(Component component) {
    Described described = component.described();
    StringBuilder text = new StringBuilder(described.value());
    if (!described.unit().isEmpty()) {
      text.append(", in ").append(described.unit());
    }
    if (single(component.form()) instanceof Form.Text form) {
      text.append(" (").append(spaced(form.type())).append(bounds(described)).append(')');
    }
    return text.toString();
  }

  /** The meanings of components that are bare references and cannot tell them; null if none is. */
  static @Nullable String ofReferences(Shape shape, Map<String, Object> properties) {
    List<String> words = new ArrayList<>();
    shape
        .components()
        .forEach(
            (name, component) -> {
              if (((Map<?, ?>) properties.getOrDefault(name, Map.of())).containsKey("$ref")) {
                words.add("`" + name + "`: " + description(component));
              }
            });
    return words.isEmpty() ? null : String.join("; ", words);
  }

  private static String bounds(Described described) {
    List<String> bounds = new ArrayList<>();
    add(bounds, "at least ", described.atLeast());
    add(bounds, "more than ", described.moreThan());
    add(bounds, "at most ", described.atMost());
    add(bounds, "less than ", described.lessThan());
    return bounds.isEmpty() ? "" : ", " + String.join(" and ", bounds);
  }

  private static void add(List<String> bounds, String words, String bound) {
    if (!bound.isEmpty()) {
      bounds.add(words + bound);
    }
  }

  /** Adds what a schema can say of bounds. */
  static void bounds(Component component, Map<String, Object> schema) {
    Described described = component.described();
    Form form = component.form();
    boolean limited = described.most() < Integer.MAX_VALUE;
    if (form instanceof Form.Numeric) {
      bound(schema, "minimum", described.atLeast(), false);
      bound(schema, "minimum", described.moreThan(), true);
      bound(schema, "maximum", described.atMost(), false);
      bound(schema, "maximum", described.lessThan(), true);
    } else if (form instanceof Form.Words && limited) {
      schema.put("maxLength", described.most());
    } else if (form instanceof Form.Listed) {
      int most = Math.min(described.most(), described.limit().usual());
      if (most < Integer.MAX_VALUE) {
        schema.put("maxItems", most);
      }
      if (described.fewest() > 0) {
        schema.put("minItems", described.fewest());
      }
    } else if (form instanceof Form.Mapped && described.fewest() > 0) {
      schema.put("minProperties", described.fewest());
    }
  }

  private static void bound(
      Map<String, Object> schema, String name, String bound, boolean exclusive) {
    if (!bound.isEmpty()) {
      BigDecimal edge = new BigDecimal(bound);
      schema.put(name, edge);
      if (exclusive) {
        // An exclusive bound is a flag in 3.0 and a number in JSON Schema: this both read alike.
        edges(schema).add(edge);
      }
    }
  }

  @SuppressWarnings("unchecked") // made here
  private static List<Object> edges(Map<String, Object> schema) {
    return (List<Object>) Tree.in(schema, "not").computeIfAbsent("enum", name -> new ArrayList<>());
  }

  /** The example in the type of the schema, or null if there is none that fits it. */
  static @Nullable Object example(Form form, String example) {
    if (example.isEmpty()) {
      return null;
    }
    if (form instanceof Form.Listed listed) {
      @Nullable Object entry = example(listed.entry(), example);
      return entry == null ? null : List.of(entry);
    }
    if (form instanceof Form.Numeric) {
      return Figures.isNumber(example) ? new BigDecimal(example) : null;
    }
    if (form instanceof Form.Flag) {
      return example.equals("true") || example.equals("yes");
    }
    if (form instanceof Form.Choice) {
      return Form.allowed(form).contains(example) ? example : null;
    }
    return form instanceof Form.Nested || form instanceof Form.Mapped ? null : example;
  }

  private static Form single(Form form) {
    return form instanceof Form.Listed listed ? listed.entry() : form;
  }

  /** {@code TemperatureDifference} as {@code temperature difference}. */
  private static String spaced(Class<?> type) {
    String name = type.getSimpleName().replaceAll("Ref$", "");
    return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
  }
}
