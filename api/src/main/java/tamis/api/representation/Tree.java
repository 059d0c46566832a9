package tamis.api.representation;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Makes maps that are written as JSON objects. */
final class Tree {
  private Tree() {}

  /** Names and values by turns; a null value is left out. */
  static Map<String, Object> of(@Nullable Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      @Nullable Object value = namesAndValues[i + 1];
      if (value != null) {
        map.put(String.valueOf(namesAndValues[i]), value);
      }
    }
    return map;
  }

  /** The object under a name, made if it is not there. */
  @SuppressWarnings("unchecked") // objects of a tree have names of text
  static Map<String, Object> in(Map<String, Object> map, String name) {
    return (Map<String, Object>) map.computeIfAbsent(name, n -> new LinkedHashMap<>());
  }
}
