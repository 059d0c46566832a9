package tamis.engine.quantity;

import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Reads and writes single amounts of one dimension, for the typed quantities. */
final class Amounts {
  private Amounts() {}

  /** So many of a unit. */
  record Read(double number, Unit unit) {}

  /** The amount in the canonical unit of {@code dimension}. Cups and spoons are US ones. */
  static double parse(String text, Dimension dimension) {
    Read read = read(text, dimension);
    return dimension == Dimension.TEMPERATURE_DIFFERENCE
        ? read.number() * read.unit().factor()
        : read.unit().toCanonical(read.number());
  }

  static Read read(String text, Dimension dimension) {
    String given = Cursor.spaced(text);
    NumberReader.Read number = NumberReader.read(given);
    String unit = number.unit();
    if (number.high() > number.low()) {
      throw refused(FaultCode.UNREADABLE_QUANTITY, given, dimension, "is a range");
    }
    if (unit.isEmpty()) {
      throw refused(FaultCode.NO_UNIT, given, dimension, "has no unit");
    }
    boolean temperature = isTemperature(dimension);
    // A bare C is a cup elsewhere.
    String meant = temperature && unit.equalsIgnoreCase("C") ? "°C" : unit;
    Unit found = Units.standard().unit(meant, Measures.US);
    if (found.dimension() != (temperature ? Dimension.TEMPERATURE : dimension)) {
      throw refused(FaultCode.WRONG_DIMENSION, given, dimension, "is a " + found.dimension());
    }
    return new Read(number.low(), found);
  }

  private static boolean isTemperature(Dimension dimension) {
    return dimension == Dimension.TEMPERATURE || dimension == Dimension.TEMPERATURE_DIFFERENCE;
  }

  static double within(double value, Dimension dimension, double low, double high) {
    return Bounds.within(value, dimension.toString(), dimension.canonical(), low, high);
  }

  static String text(double amount, String unit) {
    return Bounds.plain(amount) + " " + unit;
  }

  private static Refusal refused(FaultCode code, String given, Dimension dimension, String why) {
    String allowed = "a " + dimension + " with its unit, for example 20 " + example(dimension);
    return new Refusal(
        new Fault(code, "", given, allowed, "`" + given + "` " + why + "; must be " + allowed));
  }

  private static String example(Dimension dimension) {
    if (isTemperature(dimension)) {
      return "°C";
    }
    return dimension == Dimension.TIME ? "min" : dimension.canonical();
  }
}
