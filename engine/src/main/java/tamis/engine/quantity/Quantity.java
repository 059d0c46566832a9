package tamis.engine.quantity;

import java.util.Objects;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * How much, as a baker writes it: a number or a range with a unit, a percentage of the flour, or
 * "as needed". Which cup is meant is known only together with the {@link Measures}.
 *
 * @param text as written
 * @param kind measured, percent or as needed
 * @param low the number, or the lower end of a range; only temperatures may be negative
 * @param high the number, or the upper end of a range
 * @param unit name of the unit in {@link Units}; empty for a percentage and for as needed
 */
public record Quantity(String text, Kind kind, double low, double high, String unit) {
  private static final double MOST = 1e12;
  private static final String PERCENT_SIGN = "%";

  /** What sort of quantity it is. */
  public enum Kind {
    MEASURED,
    PERCENT,
    AS_NEEDED
  }

  public Quantity {
    Objects.requireNonNull(text, "text");
    boolean enough = low >= 0 || low >= least(kind, unit);
    if (!(enough && high >= low && high <= MOST)) {
      String allowed = Bounds.plain(least(kind, unit)) + " to 1e12";
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "",
              text,
              allowed,
              "`" + text + "` is outside of what a quantity can be: " + allowed));
    }
    low = low + 0.0;
    high = high + 0.0;
  }

  /** Nothing, or absolute zero. */
  private static double least(Kind kind, String name) {
    boolean temperature =
        kind == Kind.MEASURED && Units.standard().dimension(name) == Dimension.TEMPERATURE;
    return temperature ? Units.standard().unit(name, Measures.US).fromCanonical(0) : 0;
  }

  /** So many of a unit. */
  public static Quantity of(double amount, String unit) {
    return parse(Bounds.plain(amount) + " " + unit);
  }

  /**
   * Reads what a baker writes: {@code 2 1/4 cup}, {@code 1½ tbsp}, {@code 227 g}, {@code 3 each},
   * {@code 68 %}, {@code half a cup}, {@code 2-3 tbsp}, {@code as needed}.
   *
   * @throws Refusal if there is no number, no unit, or an unknown unit
   */
  public static Quantity parse(String text) {
    String given = Cursor.spaced(text);
    if (given.equalsIgnoreCase("as needed")) {
      return new Quantity(given, Kind.AS_NEEDED, 0, 0, "");
    }
    NumberReader.Read number = NumberReader.read(given);
    if (number.unit().isEmpty()) {
      throw noUnit(given);
    }
    String unit = Units.standard().known(number.unit());
    boolean percent = unit.equals(PERCENT_SIGN);
    return new Quantity(
        given,
        percent ? Kind.PERCENT : Kind.MEASURED,
        number.low(),
        number.high(),
        percent ? "" : unit);
  }

  private static Refusal noUnit(String given) {
    return new Refusal(
        new Fault(
            FaultCode.NO_UNIT,
            "",
            given,
            "a number and a unit, for example 227 g",
            "`" + given + "` has no unit; write one, for example `" + given + " g`"));
  }

  public boolean isMeasured() {
    return kind == Kind.MEASURED;
  }

  public boolean isPercent() {
    return kind == Kind.PERCENT;
  }

  public boolean isAsNeeded() {
    return kind == Kind.AS_NEEDED;
  }

  public boolean isRange() {
    return high > low;
  }

  /** The number, or the middle of a range. */
  public double amount() {
    return low + (high - low) / 2;
  }

  /** What the unit measures; only of a measured quantity. */
  public Dimension dimension() {
    return Units.standard().dimension(unit);
  }

  /** The same unit, so many times. The text is made anew. */
  public Quantity times(double factor) {
    if (!isMeasured() || factor == 1) {
      return this;
    }
    String number =
        Bounds.plain(low * factor) + (isRange() ? "-" + Bounds.plain(high * factor) : "");
    return new Quantity(number + " " + unit, kind, low * factor, high * factor, unit);
  }

  @Override
  public String toString() {
    return text;
  }
}
