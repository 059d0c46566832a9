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

  /** A figure that was worked out, to the digits that a {@link Figure} has. */
  static String shown(Number number) {
    if (!(number instanceof Double value)) {
      return text(number);
    }
    Figure figure = new Figure();
    return figure.is(value) ? figure.toString() : text(Figure.sure(value));
  }

  private static String decimal(BigDecimal number) {
    BigDecimal bare = number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
    boolean plain = Math.abs((long) bare.scale()) <= LONGEST_PLAIN;
    return plain ? bare.toPlainString() : bare.toString().replace("E+", "e").replace('E', 'e');
  }
}
