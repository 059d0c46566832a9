package tamis.plugin.balancing;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Figures in sentences. */
final class Words {
  private static final MathContext DIGITS = new MathContext(4, RoundingMode.HALF_UP);

  /** The simplex method is good to about so many; the rest is noise. */
  private static final double FINE = 1e9;

  private Words() {}

  /** Without the noise of the last digits. */
  static double plain(double value) {
    return Math.abs(value) < 1e5 ? Math.rint(value * FINE) / FINE + 0.0 : value;
  }

  static String number(double value) {
    BigDecimal shown = BigDecimal.valueOf(value).round(DIGITS);
    return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
  }

  static String amount(double value, String unit) {
    return unit.isEmpty() ? number(value) : number(value) + " " + unit;
  }
}
