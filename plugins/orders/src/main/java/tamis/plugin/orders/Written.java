package tamis.plugin.orders;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/** Records as plain values: for inputs of calculations that are known by name only, and results. */
final class Written {
  private Written() {}

  /** The input of another calculation. */
  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  static Map<String, Object> of(Record record) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (Component component : Shape.of(record.getClass()).components().values()) {
      @Nullable Object value = component.of(record);
      if (value != null && !(component.described().optional() && isEmpty(value))) {
        map.put(component.name(), of(component.form(), value));
      }
    }
    return map;
  }

  private static boolean isEmpty(Object value) {
    return value instanceof List<?> list
        ? list.isEmpty()
        : value instanceof Map<?, ?> map && map.isEmpty();
  }

  static Object either(TextOrObject<?> value) {
    @Nullable String text = value.text();
    @Nullable Record object = value.object();
    return text != null ? text : object == null ? "" : of(object);
  }

  private static Object of(Form form, Object value) {
    if (form instanceof Form.Numeric || form instanceof Form.Flag) {
      return value;
    }
    if (form instanceof Form.Choice choice) {
      return choice.word(value);
    }
    if (form instanceof Form.Nested) {
      return of((Record) value);
    }
    if (form instanceof Form.Either) {
      return either((TextOrObject<?>) value);
    }
    if (form instanceof Form.Listed listed) {
      return ((List<?>) value).stream().map(one -> of(listed.entry(), one)).toList();
    }
    if (form instanceof Form.Mapped mapped) {
      Map<String, Object> map = new LinkedHashMap<>();
      ((Map<?, ?>) value)
          .forEach(
              (name, one) ->
                  map.put(
                      mapped.name() instanceof Form.Choice choice
                          ? choice.word(name)
                          : String.valueOf(name),
                      of(mapped.entry(), one)));
      return map;
    }
    return value.toString();
  }
}
