package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.List;

/**
 * A scale with round steps.
 *
 * @param low where it begins
 * @param high where it ends
 * @param step from tick to tick
 */
record Ticks(double low, double high, double step) {
  private static final int ABOUT = 5;

  /** A scale on which both ends lie, a little inside. */
  static Ticks of(double least, double most) {
    double span = most - least;
    double wide = span > 0 ? span : Math.max(1, Math.abs(most) / 10);
    double rough = wide / ABOUT;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double times = rough / power;
    double step = power * (times <= 1 ? 1 : times <= 2 ? 2 : times <= 5 ? 5 : 10);
    double low = Math.floor((least - (span > 0 ? 0 : wide / 2)) / step) * step;
    double high = Math.ceil((most + (span > 0 ? 0 : wide / 2)) / step) * step;
    return new Ticks(low, high, step);
  }

  List<Double> values() {
    List<Double> values = new ArrayList<>();
    long count = Math.round((high - low) / step);
    for (long i = 0; i <= count; i++) {
      values.add(Math.rint((low + i * step) / step) * step);
    }
    return values;
  }

  /** From 0 at the low end to 1 at the high end. */
  double part(double value) {
    return (value - low) / (high - low);
  }
}
