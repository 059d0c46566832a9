package tamis.plugin.intake.line;

import org.jspecify.annotations.Nullable;

/**
 * A number or a range at a place of a line.
 *
 * @param next the token behind it
 * @param worded whether it is only an article or a number word, as prose has them too
 * @param doubt why it cannot be told for certain, or null
 */
public record Amount(double low, double high, int next, boolean worded, @Nullable String doubt) {
  /** How many times its lower end the upper end of a range is at most. */
  private static final int FARTHEST = 20;

  static Amount exactly(double value, int next, boolean worded, @Nullable String doubt) {
    return new Amount(value, value, next, worded, doubt);
  }

  /** Whether figures stand there whose value cannot be told at all. */
  public boolean isUnreadable() {
    return doubt != null && high == 0;
  }

  public boolean isRange() {
    return high > low;
  }

  Amount to(Amount end) {
    boolean backwards = end.high < low;
    boolean far = low > 0 && end.high > FARTHEST * low; // "water 1 - 750 g"
    @Nullable String told = doubt == null ? end.doubt : doubt;
    @Nullable String why = far && told == null ? "whether a range is meant" : told;
    return backwards
        ? new Amount(low, low, end.next, worded, "the range runs backwards")
        : new Amount(low, end.high, end.next, worded, why);
  }

  Amount plus(double more, int behind) {
    return new Amount(low + more, high + more, behind, worded, doubt);
  }

  Amount times(double factor) {
    return new Amount(low * factor, high * factor, next, worded, doubt);
  }
}
