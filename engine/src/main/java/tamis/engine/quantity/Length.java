package tamis.engine.quantity;

/**
 * A length, also a height above the sea; may be negative (below the sea).
 *
 * @param metres metres
 */
public record Length(double metres) implements Comparable<Length> {
  public Length {
    metres = Amounts.within(metres, Dimension.LENGTH, -1e6, 1e6);
  }

  /** So many metres. */
  public static Length ofMetres(double amount) {
    return new Length(amount);
  }

  /** So many centimetres. */
  public static Length ofCentimetres(double amount) {
    return new Length(amount / 100);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Length parse(String text) {
    return new Length(Amounts.parse(text, Dimension.LENGTH));
  }

  public double centimetres() {
    return metres * 100;
  }

  @Override
  public int compareTo(Length other) {
    return Double.compare(metres, other.metres);
  }

  @Override
  public String toString() {
    return Amounts.text(metres, "m");
  }
}
