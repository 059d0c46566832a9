package tamis.engine.spi;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/** All components that can stand in a record, through all records that it may hold. */
final class Components {
  private final Map<String, Component> found = new LinkedHashMap<>();
  private final Set<Class<?>> seen = new HashSet<>();

  private Components() {}

  /** Each component by {@code Record.name}; every record is looked into once. */
  static Map<String, Component> within(Class<? extends Record> type) {
    Components components = new Components();
    components.enter(type);
    return components.found;
  }

  /** All records that can stand in this one, and it. */
  static Set<Class<?>> records(Class<? extends Record> type) {
    Components components = new Components();
    components.enter(type);
    return components.seen;
  }

  private void enter(Class<? extends Record> type) {
    if (!seen.add(type)) {
      return;
    }
    for (Component component : Shape.of(type).components().values()) {
      found.put(type.getName() + "." + component.name(), component);
      enter(component.form());
    }
  }

  private void enter(Form form) {
    if (form instanceof Form.Nested nested) {
      enter(nested.type());
    } else if (form instanceof Form.Either either) {
      enter(either.object());
    } else if (form instanceof Form.Listed listed) {
      enter(listed.entry());
    } else if (form instanceof Form.Mapped mapped) {
      enter(mapped.entry());
    }
  }
}
