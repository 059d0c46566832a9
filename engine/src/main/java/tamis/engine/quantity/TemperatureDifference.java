package tamis.engine.quantity;

/**
 * How much warmer or colder: "20 °C warmer" is 36 °F warmer.
 *
 * @param kelvins kelvins, which are as many °C
 */
public record TemperatureDifference(double kelvins) implements Comparable<TemperatureDifference> {
  public TemperatureDifference {
    kelvins = Amounts.within(kelvins, Dimension.TEMPERATURE_DIFFERENCE, -2_000, 2_000);
  }

  /** So many kelvins, which are as many °C. */
  public static TemperatureDifference ofKelvins(double amount) {
    return new TemperatureDifference(amount);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static TemperatureDifference parse(String text) {
    return new TemperatureDifference(Amounts.parse(text, Dimension.TEMPERATURE_DIFFERENCE));
  }

  @Override
  public int compareTo(TemperatureDifference other) {
    return Double.compare(kelvins, other.kelvins);
  }

  @Override
  public String toString() {
    return Amounts.text(kelvins, "K");
  }
}
