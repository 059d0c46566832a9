package tamis.engine.record;

import java.util.List;
import java.util.Map;

/** Says in words what a value is or should be. */
final class Words {
  private Words() {}

  static String of(Form form) {
    if (form instanceof Form.Numeric number) {
      return number.whole() ? "a whole number" : "a number";
    }
    if (form instanceof Form.Flag) {
      return "true or false";
    }
    if (form instanceof Form.Choice) {
      return "one of " + String.join(", ", Form.allowed(form));
    }
    if (form instanceof Form.Text text) {
      String with = text.ofNumber() == null ? "text" : "a number or text";
      return with + " (" + spaced(text.type()) + ")";
    }
    if (form instanceof Form.Either either) {
      return "text or an object (" + spaced(either.object()) + ")";
    }
    if (form instanceof Form.Listed) {
      return "a list";
    }
    if (form instanceof Form.Free) {
      return "any JSON value";
    }
    return form instanceof Form.Words ? "text" : "an object";
  }

  static String given(Object tree) {
    if (tree instanceof Map) {
      return "an object";
    }
    if (tree instanceof List) {
      return "a list";
    }
    return tree instanceof String text ? "text \"" + text + "\"" : String.valueOf(tree);
  }

  /** {@code TemperatureDifference} as {@code temperature difference}. */
  private static String spaced(Class<?> type) {
    return type.getSimpleName()
        .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
        .toLowerCase(java.util.Locale.ROOT);
  }
}
