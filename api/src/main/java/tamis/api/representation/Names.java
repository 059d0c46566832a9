package tamis.api.representation;

import java.util.Locale;
import tamis.engine.record.Form;

/** Names of constants and of entries of maps, as callers write them. */
final class Names {
  private Names() {}

  /** The name of an entry of a map. */
  static String of(Form form, Object key) {
    return form instanceof Form.Choice choice ? choice.word(key) : key.toString();
  }

  /** The text of a value; of a constant that has none of its own, its name with hyphens. */
  static String of(Object value) {
    String text = value.toString();
    boolean unnamed = value instanceof Enum<?> constant && constant.name().equals(text);
    return unnamed ? text.toLowerCase(Locale.ROOT).replace('_', '-') : text;
  }
}
