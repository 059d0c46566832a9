package tamis.engine.quantity;

import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A figure that is not known exactly: the typical value and the range it lies in.
 *
 * @param low lower end
 * @param typical the value to work with
 * @param high upper end
 */
public record Spread(double low, double typical, double high) {
  public Spread {
    if (!(low <= typical && typical <= high) || !Double.isFinite(high - low)) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "low, typical and high must not run backwards: " + low + ", " + typical + ", " + high);
    }
    low = low + 0.0;
    typical = typical + 0.0;
    high = high + 0.0;
  }

  public static Spread exactly(double value) {
    return new Spread(value, value, value);
  }

  public static Spread zero() {
    return exactly(0);
  }

  /** Whether low and high are the same. */
  public boolean isExact() {
    return low == high;
  }

  public Spread plus(Spread other) {
    return new Spread(low + other.low, typical + other.typical, high + other.high);
  }

  /** Each end times a factor that is not negative. */
  public Spread times(double factor) {
    return new Spread(low * factor, typical * factor, high * factor);
  }

  /** Product of two figures, neither negative. */
  public Spread times(Spread other) {
    return new Spread(low * other.low, typical * other.typical, high * other.high);
  }

  /** Quotient of two figures, neither negative, the divisor above zero. */
  public Spread over(Spread other) {
    return new Spread(low / other.high, typical / other.typical, high / other.low);
  }
}
