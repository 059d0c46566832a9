package tamis.engine.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Rounds a mass to what a scale shows: under 10 g to 0.1 g, to 1 kg to 1 g, to 10 kg to 5 g, above
 * to 10 g (common practice, no source).
 */
public final class ScaleStep {
  private static final double NEAR_A_HALF = 1e-6;

  /** Below this a count times a whole step is exact. */
  private static final double EXACT = 1e9;

  private ScaleStep() {}

  /** The usual step for a mass, in grams. */
  public static double usual(double grams) {
    if (grams < 10) {
      return 0.1;
    }
    if (grams < 1_000) {
      return 1;
    }
    return grams < 10_000 ? 5 : 10;
  }

  /** The nearest multiple of a step; halves go up. */
  public static double round(double grams, double step) {
    double count = grams / step;
    double whole = Math.rint(count);
    boolean clear = Math.abs(Math.abs(count - whole) - 0.5) > NEAR_A_HALF;
    if (clear && Math.abs(whole) < EXACT) {
      double parts = Math.rint(1 / step);
      if (step == Math.rint(step)) {
        return whole * step;
      }
      if (step == 1 / parts) {
        return whole / parts;
      }
    }
    // Near a half the decimal digits decide, and only decimal arithmetic has them.
    BigDecimal size = BigDecimal.valueOf(step);
    return BigDecimal.valueOf(grams)
        .divide(size, 0, RoundingMode.HALF_UP)
        .multiply(size)
        .doubleValue();
  }

  /** The mass as a scale shows it: {@code 2.5 g}, {@code 340 g}, {@code 1.255 kg}. */
  public static String shown(double grams) {
    return shown(grams, "g", "kg");
  }

  /** A volume with the same steps: {@code 340 ml}, {@code 1.255 l}. */
  public static String shownVolume(double millilitres) {
    return shown(millilitres, "ml", "l");
  }

  private static String thousandths(long count) {
    long rest = count % 1_000;
    if (rest == 0) {
      return Long.toString(count / 1_000);
    }
    int places = rest % 10 != 0 ? 3 : rest % 100 != 0 ? 2 : 1;
    String digits = Long.toString(1_000 + rest).substring(1, 1 + places);
    return count / 1_000 + "." + digits;
  }

  private static String shown(double amount, String small, String large) {
    double rounded = round(amount, usual(amount));
    if (rounded < 1_000 && rounded == Math.rint(rounded)) {
      return (long) rounded + " " + small;
    }
    if (rounded >= 1_000 && rounded < EXACT && rounded == Math.rint(rounded)) {
      return thousandths((long) rounded) + " " + large;
    }
    BigDecimal exact = BigDecimal.valueOf(rounded);
    return rounded < 1_000
        ? exact.stripTrailingZeros().toPlainString() + " " + small
        : exact.movePointLeft(3).stripTrailingZeros().toPlainString() + " " + large;
  }
}
