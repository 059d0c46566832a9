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

  private Weight() {}

  static int of(@Nullable Object value) {
    if (value == null) {
      return 0;
    }
    if (value instanceof String text) {
      return OBJECT + text.length();
    }
    if (value instanceof Collection<?> list) {
      return OBJECT + list.stream().mapToInt(one -> REFERENCE + of(one)).sum();
    }
    if (value instanceof Map<?, ?> map) {
      return OBJECT
          + map.entrySet().stream()
              .mapToInt(entry -> OBJECT + of(entry.getKey()) + of(entry.getValue()))
              .sum();
    }
    return value instanceof Record record && isDescribed(record) ? ofRecord(record) : OBJECT;
  }

  private static int ofRecord(Record record) {
    int weight = OBJECT;
    for (var component : Shape.of(record.getClass()).components().values()) {
      weight += REFERENCE + of(component.of(record));
    }
    return weight;
  }

  private static boolean isDescribed(Record record) {
    var parts = record.getClass().getRecordComponents();
    return parts.length > 0 && parts[0].isAnnotationPresent(Described.class);
  }
}
