package tamis.engine.ingredient;

import java.util.Locale;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Reference;

/**
 * Names an ingredient by its id or by any name it goes by.
 *
 * @param name as written
 */
public record IngredientRef(String name) implements Reference {
  private static final int LONGEST = 200;

  public IngredientRef {
    if (name.isBlank() || name.length() > LONGEST) {
      throw Refusal.of(
          FaultCode.UNKNOWN_INGREDIENT,
          "an ingredient is named by 1 to " + LONGEST + " characters");
    }
  }

  public static IngredientRef parse(String text) {
    return new IngredientRef(text.strip());
  }

  /** The name in the form in which names are compared: lower case, single spaces. */
  public String folded() {
    return folded(name);
  }

  static String folded(String name) {
    return name.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }

  @Override
  public String toString() {
    return name;
  }
}
