package tamis.api.representation;

import com.fasterxml.jackson.core.io.NumberOutput;
import java.math.BigDecimal;
import java.util.regex.Pattern;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Writes numbers: as short as exactness allows, without exponent at usual magnitudes. */
final class Figures {
  private static final double PLAIN_FROM = 1e-7;
  private static final double PLAIN_BELOW = 1e21;
  private static final int LONGEST_PLAIN = 40;

  private static final Pattern NUMBER =
      Pattern.compile("-?(0|[1-9]\\d{0,40})(\\.\\d{1,40})?([eE][-+]?\\d{1,3})?");

  private static final int DIGITS = 15;

  /** Powers of ten that are exact as doubles. */
  private static final double[] POWERS = new double[23];

  static {
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = Double.parseDouble("1e" + i);
    }
  }

  private Figures() {}

  /** Whether a text is a number as JSON writes it. */
  static boolean isNumber(String text) {
    return NUMBER.matcher(text).matches();
  }

  /**
   * {@code 3} for 3.0, {@code 113.4}, {@code 0.00001}, {@code 1e-9}.
   *
   * @throws Refusal {@code failed} for what is no finite number: a calculation broke its word
   */
  static String text(Number number) {
    if (number instanceof BigDecimal decimal) {
      return decimal(decimal);
    }
    if (!(number instanceof Double || number instanceof Float)) {
      return number.toString();
    }
    double value = number.doubleValue();
    if (!Double.isFinite(value)) {
      throw Refusal.of(FaultCode.FAILED, "the calculation gave no finite number");
    }
    if (value == Math.rint(value) && Math.abs(value) < 1L << 53) {
      return Long.toString((long) value);
    }
    double size = Math.abs(value);
    String shortest = NumberOutput.toString(value, true);
    if (shortest.indexOf('E') >= 0 && size >= PLAIN_FROM && size < PLAIN_BELOW) {
      return new BigDecimal(shortest).stripTrailingZeros().toPlainString();
    }
    return shortest.replace(".0E", "e").replace('E', 'e');
  }

  /**
   * A figure that was worked out, to 15 digits: those that a double holds for sure and a cell
   * shows. The rest of 1.1520000000000001 came from arithmetic in twos.
   */
  static String shown(Number number) {
    return text(number instanceof Double value && Double.isFinite(value) ? sure(value) : number);
  }

  private static Double sure(double value) {
    if (value == Math.rint(value)) {
      return value;
    }
    int exponent = (int) Math.floor(Math.log10(Math.abs(value)));
    int places = DIGITS - 1 - exponent;
    if (places < 0 || places >= POWERS.length) {
      return value;
    }
    double power = POWERS[places];
    return Math.rint(value * power) / power;
  }

  private static String decimal(BigDecimal number) {
    BigDecimal bare = number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
    boolean plain = Math.abs((long) bare.scale()) <= LONGEST_PLAIN;
    return plain ? bare.toPlainString() : bare.toString().replace("E+", "e").replace('E', 'e');
  }
}
