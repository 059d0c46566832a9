package tamis.plugin.nutrition;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Rounds printed figures: from the shortest decimals of a number, halves up. */
final class Rounded {
  private Rounded() {}

  /** To the nearest multiple of a step: 0.15 to 0.1 is 0.2. */
  static BigDecimal toStep(double value, double step) {
    BigDecimal size = BigDecimal.valueOf(step);
    BigDecimal steps = BigDecimal.valueOf(value).divide(size, 0, RoundingMode.HALF_UP);
    return steps.multiply(size);
  }

  /** To so many significant figures. */
  static BigDecimal toFigures(double value, int figures) {
    return BigDecimal.valueOf(value).round(new MathContext(figures, RoundingMode.HALF_UP));
  }

  /** A hundred times the quotient, in decimals: 235 of 4700 is 5 exactly. */
  static double percent(double value, double whole) {
    return BigDecimal.valueOf(value)
        .multiply(BigDecimal.valueOf(100))
        .divide(BigDecimal.valueOf(whole), MathContext.DECIMAL64)
        .doubleValue();
  }

  static String plain(double value, double step) {
    return plain(toStep(value, step));
  }

  /** Without exponent and without zeros at the end. */
  static String plain(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
