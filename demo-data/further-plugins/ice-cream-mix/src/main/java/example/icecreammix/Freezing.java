package example.icecreammix;

import java.util.List;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How far the solutes push the freezing of the water: sucrose (and what counts as sucrose) by the
 * curve, the salts of milk by their own constant. As water freezes out, both are held by less water.
 */
record Freezing(double sucroseGrams, double milkSalts, double waterGrams) {
  static final Table CURVE =
      TableReader.read(
          Freezing.class,
          "ice-cream-freezing.csv",
          "Freezing of sucrose in water",
          List.of("sucrose_g_per_100g_water"));

  /** Depression in kelvins while {@code liquid} grams of the water are not ice. */
  double depression(double liquid) {
    return curve(100 * sucroseGrams / liquid) + milkSalts / liquid;
  }

  double celsius() {
    return -depression(waterGrams);
  }

  /** Part of the water that is ice. */
  double frozen(double celsius) {
    if (celsius >= celsius()) {
      return 0;
    }
    if (sucroseGrams <= 0 && milkSalts <= 0) {
      return 1;
    }
    double low = 0;
    double high = waterGrams;
    for (int step = 0; step < 80; step++) {
      double middle = (low + high) / 2;
      if (depression(middle) > -celsius) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return 1 - high / waterGrams;
  }

  /** Grams of sucrose for 100 g of the water that is still liquid. */
  double strength(double celsius) {
    return 100 * sucroseGrams / (waterGrams * (1 - frozen(celsius)));
  }

  static double end() {
    List<Row> rows = CURVE.rows();
    return rows.get(rows.size() - 1).number("sucrose_g_per_100g_water");
  }

  /** The rows about a strength; beyond the last one its slope goes on. */
  static List<Row> about(double strength) {
    List<Row> rows = CURVE.rows();
    int upper = 1;
    while (upper < rows.size() - 1
        && rows.get(upper).number("sucrose_g_per_100g_water") < strength) {
      upper++;
    }
    return List.of(rows.get(upper - 1), rows.get(upper));
  }

  static double curve(double strength) {
    List<Row> pair = about(strength);
    double x0 = pair.get(0).number("sucrose_g_per_100g_water");
    double x1 = pair.get(1).number("sucrose_g_per_100g_water");
    double y0 = pair.get(0).number("depression_kelvin");
    double y1 = pair.get(1).number("depression_kelvin");
    return y0 + (strength - x0) * (y1 - y0) / (x1 - x0);
  }
}
