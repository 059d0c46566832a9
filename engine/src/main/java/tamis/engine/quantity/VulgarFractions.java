package tamis.engine.quantity;

import java.util.Map;

/** The fractions that are one character: {@code ½}, {@code ¼}, {@code ⅔} … */
public final class VulgarFractions {
  private static final Map<Character, Double> VALUES =
      Map.ofEntries(
          Map.entry('½', 1 / 2.0),
          Map.entry('⅓', 1 / 3.0),
          Map.entry('⅔', 2 / 3.0),
          Map.entry('¼', 1 / 4.0),
          Map.entry('¾', 3 / 4.0),
          Map.entry('⅕', 1 / 5.0),
          Map.entry('⅖', 2 / 5.0),
          Map.entry('⅗', 3 / 5.0),
          Map.entry('⅘', 4 / 5.0),
          Map.entry('⅙', 1 / 6.0),
          Map.entry('⅚', 5 / 6.0),
          Map.entry('⅐', 1 / 7.0),
          Map.entry('⅛', 1 / 8.0),
          Map.entry('⅜', 3 / 8.0),
          Map.entry('⅝', 5 / 8.0),
          Map.entry('⅞', 7 / 8.0),
          Map.entry('⅑', 1 / 9.0),
          Map.entry('⅒', 1 / 10.0));

  /** Plain letters and figures come before it. */
  private static final char FIRST = '¼';

  private VulgarFractions() {}

  /** Whether a character is one. */
  public static boolean is(char c) {
    return c >= FIRST && VALUES.containsKey(c);
  }

  /** Its value; 0 of a character that is none. */
  public static double value(char c) {
    return VALUES.getOrDefault(c, 0.0);
  }
}
