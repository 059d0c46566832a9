package tamis.engine.quantity;

/**
 * Mass of one millilitre.
 *
 * @param gramsPerMillilitre grams a millilitre
 */
public record Density(double gramsPerMillilitre) implements Comparable<Density> {
  public Density {
    gramsPerMillilitre = Amounts.within(gramsPerMillilitre, Dimension.DENSITY, 1e-6, 30);
  }

  /** So many grams a millilitre. */
  public static Density ofGramsPerMillilitre(double amount) {
    return new Density(amount);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Density parse(String text) {
    return new Density(Amounts.parse(text, Dimension.DENSITY));
  }

  @Override
  public int compareTo(Density other) {
    return Double.compare(gramsPerMillilitre, other.gramsPerMillilitre);
  }

  @Override
  public String toString() {
    return Amounts.text(gramsPerMillilitre, "g/ml");
  }
}
