package tamis.engine.quantity;

/**
 * A mass, from nothing to a thousand tonnes.
 *
 * @param grams grams
 */
public record Mass(double grams) implements Comparable<Mass> {
  public Mass {
    grams = Amounts.within(grams, Dimension.MASS, 0, 1e9);
  }

  /** So many grams. */
  public static Mass ofGrams(double amount) {
    return new Mass(amount);
  }

  /** So many kilograms. */
  public static Mass ofKilograms(double amount) {
    return new Mass(amount * 1_000);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Mass parse(String text) {
    return new Mass(Amounts.parse(text, Dimension.MASS));
  }

  public static Mass zero() {
    return new Mass(0);
  }

  public Mass plus(Mass other) {
    return new Mass(grams + other.grams);
  }

  public Mass minus(Mass other) {
    return new Mass(grams - other.grams);
  }

  public Mass times(double factor) {
    return new Mass(grams * factor);
  }

  @Override
  public int compareTo(Mass other) {
    return Double.compare(grams, other.grams);
  }

  @Override
  public String toString() {
    return Amounts.text(grams, "g");
  }
}
