package tamis.engine.quantity;

/**
 * A power.
 *
 * @param watts watts
 */
public record Power(double watts) implements Comparable<Power> {
  public Power {
    watts = Amounts.within(watts, Dimension.POWER, 0, 1e9);
  }

  /** So many watts. */
  public static Power ofWatts(double amount) {
    return new Power(amount);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Power parse(String text) {
    return new Power(Amounts.parse(text, Dimension.POWER));
  }

  @Override
  public int compareTo(Power other) {
    return Double.compare(watts, other.watts);
  }

  @Override
  public String toString() {
    return Amounts.text(watts, "W");
  }
}
