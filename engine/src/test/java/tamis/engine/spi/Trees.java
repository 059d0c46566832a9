package tamis.engine.spi;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/**
 * Writes described records as plain values (maps, lists, texts, numbers, booleans), as a caller
 * would: what {@link RecordReader} reads back as an equal record. What may be left out and is
 * absent is left out; a null where a value was promised is kept, so that a test sees it.
 */
public final class Trees {
  private Trees() {}

  /** A record as a map by the names that callers write. */
  public static Map<String, Object> of(Record record) {
    Map<String, Object> tree = new LinkedHashMap<>();
    for (Component component : Shape.of(record.getClass()).components().values()) {
      Object value = component.of(record);
      boolean leftOut = component.described().optional() && isEmpty(value);
      if (value == null ? component.required() : !leftOut) {
        tree.put(component.name(), value(component.form(), value));
      }
    }
    return tree;
  }

  /** Every single value of a tree by its JSON Pointer, nulls with them. */
  public static Map<String, Object> leaves(Object tree) {
    Map<String, Object> leaves = new LinkedHashMap<>();
    gather(tree, "", leaves);
    return leaves;
  }

  /** Whether the tree has something at a JSON Pointer. */
  public static boolean has(Object tree, String pointer) {
    Object here = tree;
    for (String step : pointer.isEmpty() ? List.<String>of() : steps(pointer)) {
      if (here instanceof Map<?, ?> map && map.containsKey(step)) {
        here = map.get(step);
      } else if (here instanceof List<?> list
          && step.matches("0|[1-9]\\d{0,8}")
          && Integer.parseInt(step) < list.size()) {
        here = list.get(Integer.parseInt(step));
      } else {
        return false;
      }
    }
    return true;
  }

  private static List<String> steps(String pointer) {
    List<String> steps = new ArrayList<>();
    for (String step : pointer.substring(1).split("/", -1)) {
      steps.add(step.replace("~1", "/").replace("~0", "~"));
    }
    return steps;
  }

  private static Object value(Form form, Object value) {
    if (value == null
        || form instanceof Form.Numeric
        || form instanceof Form.Flag
        || form instanceof Form.Free) {
      return value;
    }
    if (form instanceof Form.Choice choice) {
      return choice.word(value);
    }
    if (form instanceof Form.Nested) {
      return of((Record) value);
    }
    if (form instanceof Form.Either) {
      TextOrObject<?> either = (TextOrObject<?>) value;
      return either.text() == null ? of(either.object()) : either.text();
    }
    if (form instanceof Form.Listed listed) {
      List<Object> list = new ArrayList<>();
      ((List<?>) value).forEach(entry -> list.add(value(listed.entry(), entry)));
      return list;
    }
    if (form instanceof Form.Mapped mapped) {
      Map<String, Object> map = new LinkedHashMap<>();
      ((Map<?, ?>) value)
          .forEach(
              (name, entry) ->
                  map.put(
                      String.valueOf(value(mapped.name(), name)), value(mapped.entry(), entry)));
      return map;
    }
    return value.toString();
  }

  private static boolean isEmpty(Object value) {
    return value instanceof List<?> list
        ? list.isEmpty()
        : value instanceof Map<?, ?> map && map.isEmpty();
  }

  private static void gather(Object tree, String at, Map<String, Object> leaves) {
    if (tree instanceof Map<?, ?> map) {
      map.forEach(
          (name, value) ->
              gather(value, at + "/" + RecordReader.escaped(String.valueOf(name)), leaves));
    } else if (tree instanceof List<?> list) {
      for (int i = 0; i < list.size(); i++) {
        gather(list.get(i), at + "/" + i, leaves);
      }
    } else {
      leaves.put(at, tree);
    }
  }
}
