package tamis.plugin.trials;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Figures in sentences. */
final class Words {
  private static final MathContext THREE_DIGITS = new MathContext(3, RoundingMode.HALF_UP);

  private Words() {}

  /** To a tenth, small numbers to three digits: {@code 27.5}, {@code 0.853}, {@code 453.6}. */
  static String number(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    BigDecimal shown =
        Math.abs(value) < 10 ? exact.round(THREE_DIGITS) : exact.setScale(1, RoundingMode.HALF_UP);
    return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
  }

  static String amount(double value, String unit) {
    return unit.isEmpty() ? number(value) : number(value) + " " + unit;
  }

  /** A chance in percent: {@code 1.8 %}, {@code under 0.1 %}. */
  static String percent(double chance) {
    double percent = chance * 100;
    return percent < 0.1 ? "under 0.1 %" : String.format(Locale.ROOT, "%.1f %%", percent);
  }

  static String many(int count, String one) {
    return count + " " + one + (count == 1 ? "" : "s");
  }
}
