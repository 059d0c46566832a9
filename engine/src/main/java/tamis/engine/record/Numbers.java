package tamis.engine.record;

import java.math.BigDecimal;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Plain numbers as components hold them. */
final class Numbers {
  private Numbers() {}

  /**
   * The number in the type of the component; no digit is lost on the way to a whole number.
   *
   * @throws Refusal if it is not finite in that type or not whole
   */
  static Object convert(Form.Numeric form, Number number) {
    Class<?> type = form.type();
    if (type == BigDecimal.class) {
      return number instanceof BigDecimal exact ? exact : new BigDecimal(number.toString());
    }
    double value = number.doubleValue();
    if (!Double.isFinite(value)) {
      throw refused(FaultCode.OUT_OF_BOUNDS, number, "a finite number");
    }
    if (!form.whole()) {
      return value + 0.0;
    }
    double edge = type == int.class || type == Integer.class ? Integer.MAX_VALUE : 1L << 53;
    if (value != Math.rint(value) || Math.abs(value) > edge) {
      throw refused(FaultCode.WRONG_TYPE, number, "a whole number");
    }
    return type == int.class || type == Integer.class
        ? (Object) (int) value
        : (Object) (long) value;
  }

  private static Refusal refused(FaultCode code, Number number, String allowed) {
    String given = number.toString();
    return new Refusal(
        new Fault(code, "", given, allowed, "must be " + allowed + ", was " + given));
  }
}
