package tamis.engine.quantity;

import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A part of a whole: 0.1 or "10 %".
 *
 * @param value from 0 to 1
 */
public record Fraction(double value) implements Comparable<Fraction> {
  public Fraction {
    value = Bounds.within(value, "a fraction", "", 0, 1);
  }

  /** From the bare number, 0 to 1. */
  public static Fraction ofNumber(double number) {
    if (number > 1) {
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "",
              Bounds.plain(number),
              "0 to 1, or a percentage such as \"10 %\"",
              "a fraction must be 0 to 1, was "
                  + Bounds.plain(number)
                  + "; a percentage is written with its sign, \""
                  + Bounds.plain(number)
                  + " %\""));
    }
    return new Fraction(number);
  }

  /**
   * Reads {@code 10 %} or {@code 0.1}.
   *
   * @throws Refusal if it is neither, or outside 0 to 100 %
   */
  public static Fraction parse(String text) {
    String given = Cursor.spaced(text);
    NumberReader.Read number = NumberReader.read(given);
    boolean bare = number.unit().isEmpty();
    boolean percent = "%".equals(Units.standard().name(number.unit()));
    if (number.high() > number.low() || !(bare || percent)) {
      throw new Refusal(
          new Fault(
              FaultCode.UNREADABLE_QUANTITY,
              "",
              given,
              "0 to 1, or a percentage such as \"10 %\"",
              "`" + given + "` is no fraction; write 0.1 or 10 %"));
    }
    return bare ? ofNumber(number.low()) : new Fraction(number.low() / 100);
  }

  /** What is left when this part is gone. */
  public double rest() {
    return 1 - value;
  }

  @Override
  public int compareTo(Fraction other) {
    return Double.compare(value, other.value);
  }

  @Override
  public String toString() {
    return Bounds.plain(value);
  }
}
