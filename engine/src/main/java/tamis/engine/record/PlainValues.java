package tamis.engine.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes described records as plain values (maps, lists, texts, numbers, booleans), as a caller
 * would: what {@link RecordReader} reads back as an equal record. So one calculation can hand what
 * it was given to another, and read what that answered, without knowing its classes.
 */
public final class PlainValues {
  private PlainValues() {}

  /** A record as a map by the names that callers write; what is absent is left out. */
  public static Map<String, Object> of(Record record) {
    Map<String, Object> values = new LinkedHashMap<>();
    for (Component component : Shape.of(record.getClass()).components().values()) {
      @Nullable Object value = component.of(record);
      if (value != null && !(component.described().optional() && isEmpty(value))) {
        values.put(component.name(), plain(component.form(), value));
      }
    }
    return values;
  }

  /** Text or an object, such as a formula's id or its document. */
  public static Object ofEither(TextOrObject<?> either) {
    @Nullable String text = either.text();
    @Nullable Record object = either.object();
    if (text != null) {
      return text;
    }
    return object == null ? Map.of() : of(object);
  }

  private static Object plain(Form form, Object value) {
    if (form instanceof Form.Numeric || form instanceof Form.Flag || form instanceof Form.Free) {
      return value;
    }
    if (form instanceof Form.Choice choice) {
      return choice.word(value);
    }
    if (form instanceof Form.Nested) {
      return of((Record) value);
    }
    if (form instanceof Form.Either) {
      return ofEither((TextOrObject<?>) value);
    }
    if (form instanceof Form.Listed listed) {
      List<Object> list = new ArrayList<>();
      ((List<?>) value).forEach(entry -> list.add(plain(listed.entry(), entry)));
      return list;
    }
    if (form instanceof Form.Mapped mapped) {
      Map<String, Object> map = new LinkedHashMap<>();
      ((Map<?, ?>) value)
          .forEach(
              (name, entry) ->
                  map.put(plain(mapped.name(), name).toString(), plain(mapped.entry(), entry)));
      return map;
    }
    return value.toString();
  }

  private static boolean isEmpty(Object value) {
    return value instanceof List<?> list
        ? list.isEmpty()
        : value instanceof Map<?, ?> map && map.isEmpty();
  }
}
