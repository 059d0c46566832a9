package tamis.engine.ingredient;

import java.text.Normalizer;
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
  private static final char FIRST_ACCENT = '\u0300';
  private static final char LAST_ACCENT = '\u036f';

  public IngredientRef {
    if (name.length() > LONGEST || isNothing(name)) {
      throw Refusal.of(
          FaultCode.UNKNOWN_INGREDIENT,
          "an ingredient is named by 1 to " + LONGEST + " characters");
    }
  }

  public static IngredientRef parse(String text) {
    return new IngredientRef(text.strip());
  }

  /**
   * The name in the form in which names are compared: lower case, single spaces, plain apostrophes,
   * accents in one piece with their letters.
   */
  public String folded() {
    return folded(name);
  }

  private static boolean isNothing(String name) {
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (!Character.isWhitespace(c) && !Character.isSpaceChar(c)) {
        return false;
      }
    }
    return true;
  }

  static String folded(String name) {
    return isPlain(name) ? name : foldedLetters(name);
  }

  /** As ids are: nothing in it is folded. */
  private static boolean isPlain(String name) {
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (!((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-')) {
        return false;
      }
    }
    return true;
  }

  private static String foldedLetters(String name) {
    StringBuilder folded = new StringBuilder(name.length());
    boolean space = false;
    boolean accents = false;
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      if (Character.isWhitespace(c) || Character.isSpaceChar(c)) {
        space = !folded.isEmpty();
        continue;
      }
      if (space) {
        folded.append(' ');
        space = false;
      }
      folded.append(c == '\u2019' ? '\'' : c);
      accents |= c >= FIRST_ACCENT && c <= LAST_ACCENT;
    }
    String lower = folded.toString().toLowerCase(Locale.ROOT);
    return accents ? Normalizer.normalize(lower, Normalizer.Form.NFC) : lower;
  }

  @Override
  public String toString() {
    return name;
  }
}
