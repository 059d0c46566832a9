package tamis.plugin.intake.word;

import tamis.engine.fault.Bounds;

/** Writes numbers as a baker does: decimals where they end, else a fraction of the kitchen. */
public final class Figures {
  private static final int[] FRACTIONS = {2, 3, 4, 6, 8, 16};
  private static final double NEAR = 1e-9;

  private Figures() {}

  public static String of(double value) {
    double thousands = value * 1000;
    if (Math.abs(thousands - Math.rint(thousands)) < NEAR) {
      return Bounds.plain(Math.rint(thousands) / 1000);
    }
    for (int below : FRACTIONS) {
      double above = value * below;
      if (Math.abs(above - Math.rint(above)) < NEAR) {
        return fraction((long) Math.rint(above), below);
      }
    }
    return Bounds.plain(value);
  }

  private static String fraction(long above, int below) {
    long whole = above / below;
    return (whole == 0 ? "" : whole + " ") + above % below + "/" + below;
  }

  public static String of(double low, double high) {
    return high > low ? of(low) + " to " + of(high) : of(low);
  }

  /** Takes away the noise of adding spoons and cups; thirds keep their digits. */
  public static double rounded(double value) {
    double near = Math.rint(value * 1e6) / 1e6;
    double part = Math.rint(value * 48) / 48; // spoons of cups, thirds of spoons
    double noise = 1e-12 * Math.max(1, value);
    return Math.abs(near - value) < noise ? near : Math.abs(part - value) < noise ? part : value;
  }
}
