package tamis.plugin.intake.word;

import org.jspecify.annotations.Nullable;

/** Fractions set in small figures: {@code ¹⁄₂}, {@code ³/₄}. Small figures alone are footnotes. */
record SmallFigures(double value, int end) {
  private static final String ABOVE = "⁰¹²³⁴⁵⁶⁷⁸⁹";
  private static final String BELOW = "₀₁₂₃₄₅₆₇₈₉";
  private static final int MOST_DIGITS = 2;

  /** The fraction that begins at a place of a line, or null. */
  static @Nullable SmallFigures at(String line, int from) {
    int slash = behind(ABOVE, line, from);
    boolean over =
        slash > from && slash < line.length() && "/\u2044".indexOf(line.charAt(slash)) >= 0;
    int end = over ? behind(BELOW, line, slash + 1) : from;
    int below = over ? number(BELOW, line, slash + 1, end) : 0;
    return below == 0
        ? null
        : new SmallFigures((double) number(ABOVE, line, from, slash) / below, end);
  }

  private static int behind(String figures, String line, int from) {
    int at = from;
    while (at < line.length() && at - from < MOST_DIGITS && figures.indexOf(line.charAt(at)) >= 0) {
      at++;
    }
    return at;
  }

  private static int number(String figures, String line, int from, int to) {
    int number = 0;
    for (int i = from; i < to; i++) {
      number = 10 * number + figures.indexOf(line.charAt(i));
    }
    return number;
  }
}
