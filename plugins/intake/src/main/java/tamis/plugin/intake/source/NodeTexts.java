package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Figures;

/**
 * Takes texts out of the lists and objects that pages write for ingredients and steps. What has no
 * form that is known is taken as it stands, so that somebody sees it.
 */
final class NodeTexts {
  private static final int DEEPEST = 64;
  private static final List<String> LISTS =
      List.of("@list", "@set", "itemListElement", "item", "steps", "step");
  private static final List<String> AMOUNTS = List.of("amount", "quantity", "requiredQuantity");
  private static final List<String> UNITS = List.of("unit", "unitText", "unitCode");
  private static final List<String> NAMES = List.of("name", "ingredient", "food", "item");

  private final List<Said> said = new ArrayList<>();

  /**
   * One text.
   *
   * @param part name of the list that it stands in, or null
   */
  record Said(String text, @Nullable String part) {}

  /** A property by its name, in the short form or in full; null if there is none. */
  static @Nullable Object property(Map<?, ?> node, String name) {
    for (String before : List.of("", "schema:", "https://schema.org/", "http://schema.org/")) {
      @Nullable Object value = node.get(before + name);
      if (value != null) {
        return value;
      }
    }
    return null;
  }

  List<Said> said() {
    return said;
  }

  List<String> texts() {
    return said.stream().map(Said::text).toList();
  }

  void ingredients(@Nullable Object value) {
    ingredients(value, null, 0);
  }

  private void ingredients(@Nullable Object value, @Nullable String part, int depth) {
    if (value instanceof List<?> list && depth < DEEPEST) {
      list.forEach(entry -> ingredients(entry, part, depth + 1));
    } else if (value instanceof Map<?, ?> map && inner(map) != null && depth < DEEPEST) {
      @Nullable String name = plain(map.get("name"));
      ingredients(inner(map), name == null ? part : name, depth + 1);
    } else if (value instanceof Map<?, ?> map) {
      add(ingredient(map), part);
    } else if (value != null) {
      add(words(value), part);
    }
  }

  /** "@value", "text", or amount, unit and name in the order in which a baker writes them. */
  private static String ingredient(Map<?, ?> map) {
    for (String name : List.of("@value", "text")) {
      @Nullable String text = plain(map.get(name));
      if (text != null) {
        return text;
      }
    }
    @Nullable String name = first(map, NAMES);
    @Nullable Object amount = firstValue(map, AMOUNTS);
    amount = amount == null ? map.get("value") : amount;
    if (name == null) {
      return words(map);
    }
    StringBuilder line = new StringBuilder();
    if (amount instanceof Map<?, ?> measured) {
      append(line, plain(measured.get("value")));
      append(line, first(measured, UNITS));
    } else {
      append(line, plain(amount));
    }
    append(line, first(map, UNITS));
    append(line, name);
    @Nullable String note = first(map, List.of("preparation", "description", "note", "notes"));
    return note == null ? line.toString() : line + ", " + note;
  }

  private static void append(StringBuilder line, @Nullable String words) {
    if (words != null) {
      line.append(line.isEmpty() ? "" : " ").append(words);
    }
  }

  /** Steps as text, HowToStep or HowToSection, in lists or alone. */
  void steps(@Nullable Object value) {
    steps(value, 0);
  }

  private void steps(@Nullable Object value, int depth) {
    if (value instanceof List<?> list && depth < DEEPEST) {
      list.forEach(step -> steps(step, depth + 1));
    } else if (value instanceof Map<?, ?> map) {
      @Nullable String text = plain(map.get("text"));
      @Nullable String value2 = text == null ? plain(map.get("@value")) : text;
      @Nullable String name = plain(map.get("name"));
      @Nullable Object inner = depth < DEEPEST ? inner(map) : null;
      if (name != null && !(value2 != null && value2.startsWith(name))) {
        add(name, null);
      }
      if (value2 != null) {
        add(value2, null);
      }
      if (inner != null) {
        steps(inner, depth + 1);
      } else if (name == null && value2 == null) {
        add(words(map), null);
      }
    } else if (value != null) {
      add(words(value), null);
    }
  }

  private static @Nullable Object inner(Map<?, ?> map) {
    @Nullable Object inner = firstValue(map, LISTS);
    return inner instanceof List || inner instanceof Map ? inner : null;
  }

  private static @Nullable Object firstValue(Map<?, ?> map, List<String> names) {
    for (String name : names) {
      @Nullable Object value = property(map, name);
      if (value != null) {
        return value;
      }
    }
    return null;
  }

  private static @Nullable String first(Map<?, ?> map, List<String> names) {
    return plain(firstValue(map, names));
  }

  private static @Nullable String plain(@Nullable Object value) {
    if (value instanceof String text) {
      return text.isBlank() ? null : text;
    }
    return value instanceof Number number ? Figures.of(number.doubleValue()) : null;
  }

  /** A value as text; lists and objects as they stand. */
  private static String words(Object value) {
    @Nullable String plain = plain(value);
    return plain != null
        ? plain
        : value instanceof String ? "" : JsonText.write(value).replaceAll("\\s+", " ").strip();
  }

  private void add(String text, @Nullable String part) {
    if (!text.isBlank()) {
      said.add(new Said(text, part));
    }
  }
}
