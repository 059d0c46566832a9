package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How long Salmonella lasts in an egg product: D, the minutes that leave a tenth, falls tenfold for
 * each z degrees. Of two publications the one with the longer D is taken.
 */
record Resistance(Row row) {
  static final Table TABLE =
      TableReader.read(
          Resistance.class,
          "/tamis/plugin/stages/egg-resistance.csv",
          "Heat resistance of Salmonella in egg products",
          List.of("product", "sucrose_percent"));

  /** Sugar protects; no D is published for more. */
  static final double MOST_SUGAR_PERCENT = 10;

  /**
   * @throws Refusal {@code outside-range} for more sugar than was measured
   */
  static Resistance of(EggProduct product, double sugarPercent) {
    if (sugarPercent > MOST_SUGAR_PERCENT) {
      throw new Refusal(
          new Fault(
              FaultCode.OUTSIDE_RANGE,
              "/sugar",
              sugarPercent + " %",
              "0 % to 10 %",
              "no resistance is published above 10 % of sugar, was "
                  + sugarPercent
                  + " %; sugar protects, so the true figure is worse"));
    }
    boolean sugared = product.isSugared() || sugarPercent > 0;
    @Nullable Row row = TABLE.row(product.base() + "/" + (sugared ? "10" : "0"));
    if (row == null) {
      throw Refusal.of(
          FaultCode.OUTSIDE_RANGE,
          "/sugar",
          "no resistance is published for " + product + " with sugar");
    }
    return new Resistance(row);
  }

  double z() {
    return row.number("z_c");
  }

  double zLow() {
    return row.number("z_low_c");
  }

  double zHigh() {
    return row.number("z_high_c");
  }

  double lowest() {
    return row.number("lowest_c");
  }

  double highest() {
    return row.number("highest_c");
  }

  /** Minutes that leave a tenth. */
  double minutes(double celsius, double z) {
    return row.number("d_minutes") * Math.pow(10, (row.number("reference_c") - celsius) / z);
  }

  /**
   * Tenfold reductions while the temperature runs evenly from one to another; what lies below the
   * range counts nothing.
   */
  double reductions(double minutes, double from, double to, double z) {
    double low = lowest();
    if (from < low && to < low) {
      return 0;
    }
    if (from < low || to < low) {
      double part = (Math.max(from, to) - low) / Math.abs(to - from);
      return reductions(minutes * part, low, Math.max(from, to), z);
    }
    double start = 1 / minutes(from, z);
    double end = 1 / minutes(to, z);
    double mean = Math.abs(to - from) < 1e-9 ? start : (end - start) / Math.log(end / start);
    return minutes * mean;
  }
}
