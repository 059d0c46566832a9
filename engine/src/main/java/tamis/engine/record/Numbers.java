package tamis.engine.record;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Plain numbers as components hold them. */
final class Numbers {
  /** The largest whole number that a double tells from its neighbours. */
  private static final long MOST_WHOLE = (1L << 53) - 1;

  private Numbers() {}

  /**
   * The number in the type of the component; no digit is lost on the way to a whole number.
   *
   * @throws Refusal if it is not finite in that type or not whole
   */
  static Object convert(Form.Numeric form, Number number) {
    Class<?> type = form.type();
    double value = number.doubleValue();
    @Nullable BigDecimal exact = number instanceof BigDecimal decimal ? decimal : null;
    if (!Double.isFinite(value) || (value == 0 && exact != null && exact.signum() != 0)) {
      throw refused(
          FaultCode.OUT_OF_BOUNDS, number, "a finite number no closer to zero than 4.9e-324");
    }
    if (type == BigDecimal.class) {
      return exact != null ? exact : new BigDecimal(number.toString());
    }
    if (!form.whole()) {
      return value + 0.0;
    }
    if (exact != null && exact.stripTrailingZeros().scale() > 0) {
      throw refused(FaultCode.WRONG_TYPE, number, "a whole number");
    }
    double edge = type == int.class || type == Integer.class ? Integer.MAX_VALUE : MOST_WHOLE;
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
