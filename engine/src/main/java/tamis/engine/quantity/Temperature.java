package tamis.engine.quantity;

import tamis.engine.fault.Bounds;

/**
 * A temperature as a thermometer reads it. It is kept in °C, so that 20 °C stays 20.
 *
 * @param celsius degrees Celsius
 */
public record Temperature(double celsius) implements Comparable<Temperature> {
  private static final double ZERO_CELSIUS_IN_KELVIN = 273.15;

  public Temperature {
    celsius = Bounds.within(celsius, "temperature", "°C", -ZERO_CELSIUS_IN_KELVIN, 2_000);
  }

  /** So many degrees Celsius. */
  public static Temperature ofCelsius(double amount) {
    return new Temperature(amount);
  }

  /**
   * Reads a temperature with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Temperature parse(String text) {
    Amounts.Read read = Amounts.read(text, Dimension.TEMPERATURE);
    Unit unit = read.unit();
    double zero = unit.offset() * unit.factor() - ZERO_CELSIUS_IN_KELVIN;
    double celsius = read.number() * unit.factor() + zero;
    return new Temperature(zero == 0 ? celsius : rounded(celsius));
  }

  public Temperature plus(TemperatureDifference difference) {
    return new Temperature(celsius + difference.kelvins());
  }

  public TemperatureDifference minus(Temperature other) {
    return new TemperatureDifference(celsius - other.celsius);
  }

  /** Takes away the noise that another scale brings in, far below any thermometer. */
  private static double rounded(double celsius) {
    return Math.rint(celsius * 1e9) / 1e9;
  }

  @Override
  public int compareTo(Temperature other) {
    return Double.compare(celsius, other.celsius);
  }

  @Override
  public String toString() {
    return Amounts.text(celsius, "°C");
  }
}
