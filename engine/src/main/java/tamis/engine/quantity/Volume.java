package tamis.engine.quantity;

/**
 * A volume, from nothing to a thousand cubic metres.
 *
 * @param millilitres millilitres
 */
public record Volume(double millilitres) implements Comparable<Volume> {
  public Volume {
    millilitres = Amounts.within(millilitres, Dimension.VOLUME, 0, 1e9);
  }

  /** So many millilitres. */
  public static Volume ofMillilitres(double amount) {
    return new Volume(amount);
  }

  /** So many litres. */
  public static Volume ofLitres(double amount) {
    return new Volume(amount * 1_000);
  }

  /**
   * Reads an amount with its unit, and what {@link #toString} writes.
   *
   * @throws tamis.engine.fault.Refusal if it is none, or out of bounds
   */
  public static Volume parse(String text) {
    return new Volume(Amounts.parse(text, Dimension.VOLUME));
  }

  public static Volume zero() {
    return new Volume(0);
  }

  public Volume plus(Volume other) {
    return new Volume(millilitres + other.millilitres);
  }

  public Volume minus(Volume other) {
    return new Volume(millilitres - other.millilitres);
  }

  public Volume times(double factor) {
    return new Volume(millilitres * factor);
  }

  @Override
  public int compareTo(Volume other) {
    return Double.compare(millilitres, other.millilitres);
  }

  @Override
  public String toString() {
    return Amounts.text(millilitres, "ml");
  }
}
