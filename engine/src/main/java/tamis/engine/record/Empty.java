package tamis.engine.record;

import java.util.List;
import java.util.Map;

/** What stands for a list or map that was left out. */
final class Empty {
  private Empty() {}

  static Object of(Form form) {
    if (form instanceof Form.Listed) {
      return List.of();
    }
    if (form instanceof Form.Mapped) {
      return Map.of();
    }
    throw new IllegalArgumentException("only a list or a map can be optional; use @Nullable");
  }
}
