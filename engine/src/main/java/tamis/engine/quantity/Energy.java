package tamis.engine.quantity;

/**
 * An energy.
 *
 * @param joules joules
 */
public record Energy(double joules) implements Comparable<Energy> {
  public Energy {
    joules = Amounts.within(joules, Dimension.ENERGY, 0, 1e15);
  }

  /** So many joules. */
  public static Energy ofJoules(double amount) {
    return new Energy(amount);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Energy parse(String text) {
    return new Energy(Amounts.parse(text, Dimension.ENERGY));
  }

  @Override
  public int compareTo(Energy other) {
    return Double.compare(joules, other.joules);
  }

  @Override
  public String toString() {
    return Amounts.text(joules, "J");
  }
}
