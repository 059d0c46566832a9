package tamis.engine.fault;

/** Checks of single numbers, for the compact constructors of value records. */
public final class Bounds {
  private Bounds() {}

  /**
   * The value itself, never {@code -0.0}.
   *
   * @throws Refusal {@code out-of-bounds} unless it is finite and within low and high
   */
  public static double within(double value, String what, String unit, double low, double high) {
    if (!(value >= low && value <= high)) {
      String allowed = plain(low) + " to " + plain(high) + (unit.isEmpty() ? "" : " " + unit);
      String given = plain(value) + (unit.isEmpty() ? "" : " " + unit);
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "",
              given,
              allowed,
              what + " must be " + allowed + ", was " + given));
    }
    return value + 0.0;
  }

  /** A number as a person writes it: no trailing {@code .0}. */
  public static String plain(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
