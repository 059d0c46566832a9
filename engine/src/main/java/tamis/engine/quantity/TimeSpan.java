package tamis.engine.quantity;

/**
 * How long something takes.
 *
 * @param seconds seconds
 */
public record TimeSpan(double seconds) implements Comparable<TimeSpan> {
  public TimeSpan {
    seconds = Amounts.within(seconds, Dimension.TIME, 0, 1e9);
  }

  /** So many seconds. */
  public static TimeSpan ofSeconds(double amount) {
    return new TimeSpan(amount);
  }

  /** So many minutes. */
  public static TimeSpan ofMinutes(double amount) {
    return new TimeSpan(amount * 60);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static TimeSpan parse(String text) {
    return new TimeSpan(Amounts.parse(text, Dimension.TIME));
  }

  public double minutes() {
    return seconds / 60;
  }

  @Override
  public int compareTo(TimeSpan other) {
    return Double.compare(seconds, other.seconds);
  }

  @Override
  public String toString() {
    return Amounts.text(seconds, "s");
  }
}
