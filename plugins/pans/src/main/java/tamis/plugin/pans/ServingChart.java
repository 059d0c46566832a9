package tamis.plugin.pans;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.pan.CakeShape;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** What printed charts say of layer cakes that are cut into slices of 1 × 2 in. */
final class ServingChart {
  static final Table TABLE =
      TableReader.read(
          ServingChart.class,
          "/tamis/plugin/pans/servings.csv",
          "Portions of layer cakes in printed charts, slices of 1 × 2 in",
          List.of("shape", "size_in"));
  private static final double CM_PER_INCH = 2.54;
  private static final double CHART_SLICE_SQUARE_CM = 2 * CM_PER_INCH * CM_PER_INCH;

  private ServingChart() {}

  /** The row of this size, or null if the slice or the cake is none of the chart's. */
  static @Nullable Row row(CakeShape cake, Slices.SliceSize slice) {
    if (Math.abs(slice.squareCm() - CHART_SLICE_SQUARE_CM) > 1e-6) {
      return null;
    }
    for (Row row : TABLE.rows()) {
      boolean size = Math.abs(row.number("size_in") * CM_PER_INCH - cake.widestCm()) < 1e-6;
      if (size && row.text("shape").equals(cake.shape().toString())) {
        return row;
      }
    }
    return null;
  }

  /** Whole slices in straight rows, laid the better way; null of a round cake. */
  static @Nullable Integer byRows(CakeShape cake, Slices.SliceSize slice) {
    if (cake.shape() == CakeShape.Shape.ROUND) {
      return null;
    }
    double length = slice.length().centimetres();
    double width = slice.width().centimetres();
    return Math.max(
        whole(cake.widestCm(), length) * whole(cake.narrowestCm(), width),
        whole(cake.widestCm(), width) * whole(cake.narrowestCm(), length));
  }

  private static int whole(double side, double slice) {
    return (int) Math.floor(side / slice * (1 + 1e-9));
  }
}
