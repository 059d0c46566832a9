package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/** Writes described records as maps, lists, texts, numbers and flags, as a caller would. */
final class Plain {
  private Plain() {}

  static Map<String, Object> of(Record record) {
    Map<String, Object> tree = new LinkedHashMap<>();
    for (Component component : Shape.of(record.getClass()).components().values()) {
      @Nullable Object value = component.of(record);
      boolean empty =
          value == null
              || (value instanceof List<?> list && list.isEmpty())
              || (value instanceof Map<?, ?> map && map.isEmpty());
      if (value != null && !(empty && !component.required())) {
        tree.put(component.name(), value(component.form(), value));
      }
    }
    return tree;
  }

  private static Object value(Form form, Object value) {
    if (form instanceof Form.Choice choice) {
      return choice.word(value);
    }
    if (form instanceof Form.Nested) {
      return of((Record) value);
    }
    if (form instanceof Form.Either) {
      TextOrObject<?> either = (TextOrObject<?>) value;
      @Nullable String text = either.text();
      return text == null ? of(Objects.requireNonNull(either.object())) : text;
    }
    if (form instanceof Form.Listed listed) {
      List<Object> list = new ArrayList<>();
      ((List<?>) value).forEach(entry -> list.add(value(listed.entry(), entry)));
      return list;
    }
    if (form instanceof Form.Mapped mapped) {
      Map<String, Object> map = new LinkedHashMap<>();
      ((Map<?, ?>) value)
          .forEach((name, entry) -> map.put(String.valueOf(name), value(mapped.entry(), entry)));
      return map;
    }
    boolean plain =
        form instanceof Form.Numeric || form instanceof Form.Flag || form instanceof Form.Free;
    return plain ? value : value.toString();
  }
}
