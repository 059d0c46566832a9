package tamis.engine.quantity;

/**
 * A pressure, absolute.
 *
 * @param pascals pascals
 */
public record Pressure(double pascals) implements Comparable<Pressure> {
  public Pressure {
    pascals = Amounts.within(pascals, Dimension.PRESSURE, 1, 1e8);
  }

  /** So many pascals. */
  public static Pressure ofPascals(double amount) {
    return new Pressure(amount);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Pressure parse(String text) {
    return new Pressure(Amounts.parse(text, Dimension.PRESSURE));
  }

  @Override
  public int compareTo(Pressure other) {
    return Double.compare(pascals, other.pascals);
  }

  @Override
  public String toString() {
    return Amounts.text(pascals, "Pa");
  }
}
