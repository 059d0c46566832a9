package tamis.api.http;

import java.util.Collection;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;
import tamis.engine.record.Shape;

/** About how many bytes a value takes in memory, for the limit of a cache. */
final class Weight {
  /** An object with its header and a field or two, on a 64-bit machine. */
  private static final int OBJECT = 32;

  private static final int REFERENCE = 8;

  private static final ClassValue<Boolean> DESCRIBED =
      new ClassValue<>() {
        @Override
        protected Boolean computeValue(Class<?> type) {
          var parts = type.getRecordComponents();
          return parts.length > 0 && parts[0].isAnnotationPresent(Described.class);
        }
      };

  private Weight() {}

  static int of(@Nullable Object value) {
    if (value == null) {
      return 0;
    }
    if (value instanceof String text) {
      return OBJECT + text.length();
    }
    if (value instanceof Collection<?> list) {
      int weight = OBJECT;
      for (Object one : list) {
        weight += REFERENCE + of(one);
      }
      return weight;
    }
    if (value instanceof Map<?, ?> map) {
      int weight = OBJECT;
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        weight += OBJECT + of(entry.getKey()) + of(entry.getValue());
      }
      return weight;
    }
    return value instanceof Record record && DESCRIBED.get(record.getClass())
        ? ofRecord(record)
        : OBJECT;
  }

  private static int ofRecord(Record record) {
    int weight = OBJECT;
    for (var component : Shape.of(record.getClass()).inOrder()) {
      weight += REFERENCE + of(component.of(record));
    }
    return weight;
  }
}
