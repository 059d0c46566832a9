package tamis.plugin.stages;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DiagonalMatrix;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;
import org.jspecify.annotations.Nullable;

/**
 * A curve laid through readings by least squares, each reading weighted by how sure it is. The
 * spread of what is foretold comes from the covariance of the parameters, so it narrows as readings
 * come in; if they scatter more than they should, it widens by that.
 */
final class Fit {
  private static final int MOST_STEPS = 500;

  /** Two standard deviations. */
  private static final double WIDTH = 2;

  private final Curve curve;
  private final double[] parameters;
  private final RealMatrix covariance;
  private final double scatter;

  private Fit(Curve curve, double[] parameters, RealMatrix covariance, double scatter) {
    this.curve = curve;
    this.parameters = parameters;
    this.covariance = covariance;
    this.scatter = scatter;
  }

  /** A curve over time. */
  interface Curve {
    double at(double minute, double[] parameters);
  }

  /** When something is reached. */
  record Moment(double minute, double low, double high) {}

  static @Nullable Fit of(
      Curve curve, double[] minutes, double[] values, double[] sureness, double[] start) {
    double[] weights = new double[values.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = 1 / (sureness[i] * sureness[i]);
    }
    try {
      LeastSquaresOptimizer.Optimum best =
          new LevenbergMarquardtOptimizer()
              .optimize(
                  new LeastSquaresBuilder()
                      .model(point -> valueAndSlopes(curve, minutes, point.toArray()))
                      .target(values)
                      .weight(new DiagonalMatrix(weights))
                      .start(start)
                      .maxEvaluations(MOST_STEPS)
                      .maxIterations(MOST_STEPS)
                      .build());
      int free = values.length - start.length;
      double chi = best.getCost() * best.getCost();
      double inflation = free > 0 ? Math.max(1, chi / free) : 1;
      return new Fit(
          curve,
          best.getPoint().toArray(),
          best.getCovariances(1e-14).scalarMultiply(inflation),
          free > 0 ? Math.sqrt(chi / free) : 0);
    } catch (MathRuntimeException noFit) {
      return null;
    }
  }

  double at(double minute) {
    return curve.at(minute, parameters);
  }

  double parameter(int index) {
    return parameters[index];
  }

  /** Root mean square of the misses, in units of how sure a reading is; 0 with none to spare. */
  double scatter() {
    return scatter;
  }

  /** When the curve reaches {@code goal} between two minutes; null if it does not. */
  @Nullable Moment reaches(double goal, double from, double until) {
    DoubleUnaryOperator miss = minute -> at(minute) - goal;
    if (miss.applyAsDouble(from) * miss.applyAsDouble(until) > 0) {
      return null;
    }
    double minute = Roots.between(from, until, miss);
    double step = Math.max(1e-4, Math.abs(minute) * 1e-6);
    double slope = (at(minute + step) - at(minute - step)) / (2 * step);
    double half = slope == 0 ? until - minute : WIDTH * deviation(minute) / Math.abs(slope);
    return new Moment(
        minute, Math.max(from, minute - half), Math.min(Math.max(until, minute), minute + half));
  }

  /** Standard deviation of the curve at a minute. */
  private double deviation(double minute) {
    double[] slopes = slopes(curve, minute, parameters);
    RealVector row = new ArrayRealVector(slopes);
    return Math.sqrt(Math.max(0, row.dotProduct(covariance.operate(row))));
  }

  private static Pair<RealVector, RealMatrix> valueAndSlopes(
      Curve curve, double[] minutes, double[] point) {
    double[] values = new double[minutes.length];
    double[][] slopes = new double[minutes.length][];
    for (int i = 0; i < minutes.length; i++) {
      values[i] = curve.at(minutes[i], point);
      slopes[i] = slopes(curve, minutes[i], point);
    }
    return new Pair<>(new ArrayRealVector(values), MatrixUtils.createRealMatrix(slopes));
  }

  private static double[] slopes(Curve curve, double minute, double[] point) {
    double[] slopes = new double[point.length];
    for (int i = 0; i < point.length; i++) {
      double step = Math.max(1e-7, Math.abs(point[i]) * 1e-6);
      double[] up = point.clone();
      double[] down = point.clone();
      up[i] += step;
      down[i] -= step;
      slopes[i] = (curve.at(minute, up) - curve.at(minute, down)) / (2 * step);
    }
    return slopes;
  }
}
