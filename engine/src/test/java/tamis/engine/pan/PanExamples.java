package tamis.engine.pan;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import tamis.engine.quantity.Length;

/** Pans for tests: from a row of an example table, and drawn from a seed. */
final class PanExamples {
  private PanExamples() {}

  /** The shape stands in column 0, then ten dimensions in centimetres. */
  static Pan pan(ArgumentsAccessor row) {
    return new Pan(
        Pan.Shape.valueOf(row.getString(0).toUpperCase(Locale.ROOT)),
        cm(row.getDouble(1)),
        cm(row.getDouble(2)),
        cm(row.getDouble(3)),
        cm(row.getDouble(4)),
        cm(row.getDouble(5)),
        cm(row.getDouble(6)),
        cm(row.getDouble(7)),
        cm(row.getDouble(8)),
        cm(row.getDouble(9)),
        cm(row.getDouble(10)),
        null);
  }

  static Pan drawn(Pan.Shape shape, SplittableRandom random, double scale) {
    double a = random.nextDouble(1, 60) * scale;
    double b = random.nextDouble(1, 60) * scale;
    double h = random.nextDouble(1, 20) * scale;
    double taper = random.nextDouble(0.5, 1);
    return switch (shape) {
      case ROUND, DOME -> pan(shape, a, null, null, null, null, null, null, null, null, h);
      case SQUARE -> pan(shape, null, null, a, null, null, null, null, null, null, h);
      case OBLONG ->
          pan(
              shape,
              null,
              null,
              null,
              Math.max(a, b),
              Math.min(a, b),
              Math.max(a, b) * taper,
              Math.min(a, b) * taper,
              null,
              null,
              h);
      case RECTANGLE, LOAF ->
          pan(shape, null, null, null, a, b, a * taper, b * taper, null, null, h);
      case FRUSTUM -> pan(shape, null, null, null, null, null, null, null, a, b, h);
      case RING -> pan(shape, a, a * taper / 2, null, null, null, null, null, null, null, h);
      case TRAY -> pan(shape, null, null, null, a, b, null, null, null, null, h);
    };
  }

  static Pan frustum(double top, double bottom, double height) {
    return pan(Pan.Shape.FRUSTUM, null, null, null, null, null, null, null, top, bottom, height);
  }

  static Pan ring(double diameter, double core, double height) {
    return pan(Pan.Shape.RING, diameter, core, null, null, null, null, null, null, null, height);
  }

  static Pan loaf(double length, double width, double bottomLength, double bottomWidth, double h) {
    return pan(
        Pan.Shape.LOAF, null, null, null, length, width, bottomLength, bottomWidth, null, null, h);
  }

  static Length cm(Double centimetres) {
    return centimetres == null ? null : Length.ofCentimetres(centimetres);
  }

  private static Pan pan(Pan.Shape shape, Double... cm) {
    return new Pan(
        shape, cm(cm[0]), cm(cm[1]), cm(cm[2]), cm(cm[3]), cm(cm[4]), cm(cm[5]), cm(cm[6]),
        cm(cm[7]), cm(cm[8]), cm(cm[9]), null);
  }
}
