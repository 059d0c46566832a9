package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The form of a value, as it is read, written and described. */
public sealed interface Form {
  /** A plain number; {@code whole} if it has no fraction. */
  record Numeric(Class<?> type, boolean whole) implements Form {}

  /** True or false. */
  record Flag() implements Form {}

  /** Free text. */
  record Words() implements Form {}

  /** One of a closed list of words. */
  record Choice(Class<?> type, Map<String, Object> words) implements Form {
    public String word(Object constant) {
      for (Map.Entry<String, Object> entry : words.entrySet()) {
        if (entry.getValue() == constant) {
          return entry.getKey();
        }
      }
      throw new IllegalArgumentException(constant + " is none of " + words.keySet());
    }
  }

  /**
   * A value written as text, such as a mass; {@code ofNumber} is there if a bare number is read
   * too.
   */
  record Text(Class<?> type, MethodHandle parse, @Nullable MethodHandle ofNumber) implements Form {}

  /** An object with named components. */
  record Nested(Class<? extends Record> type) implements Form {
    public Shape shape() {
      return Shape.of(type);
    }
  }

  /** Text or an object. */
  record Either(
      Class<?> type, MethodHandle parse, Class<? extends Record> object, MethodHandle ofObject)
      implements Form {}

  /** A list of values of one form. */
  record Listed(Form entry) implements Form {}

  /** An object whose names are values of one form, either words or a closed choice. */
  record Mapped(Form name, Form entry) implements Form {}

  /** Any JSON value: what its parts mean is said by the standard it follows. */
  record Free() implements Form {}

  /** The words of a closed choice, or an empty list. */
  static List<String> allowed(Form form) {
    return form instanceof Choice choice ? List.copyOf(choice.words().keySet()) : List.of();
  }
}
