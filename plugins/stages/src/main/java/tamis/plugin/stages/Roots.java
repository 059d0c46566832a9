package tamis.plugin.stages;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;

/** Where a function that rises or falls throughout is zero. */
final class Roots {
  private static final int MOST_STEPS = 200;

  private Roots() {}

  /**
   * Between two places where the function has different signs; else the end nearer to zero, which
   * is both where they are one place.
   */
  static double between(double low, double high, DoubleUnaryOperator function) {
    double atLow = function.applyAsDouble(low);
    double atHigh = function.applyAsDouble(high);
    if (low == high || atLow * atHigh > 0) {
      return Math.abs(atLow) <= Math.abs(atHigh) ? low : high;
    }
    return new BrentSolver(1e-14, 1e-11, 1e-15)
        .solve(MOST_STEPS, function::applyAsDouble, low, high);
  }
}
