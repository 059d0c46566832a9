package tamis.plugin.trials;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How much of a measure counts as one width where there is no window that has one.
 *
 * @param row of the table
 */
record Scale(Row row) {
  static final Table TABLE =
      TableReader.read(
          Scale.class,
          "/tamis/plugin/trials/trial-scales.csv",
          "What counts as one width when measures of trials are put in order",
          List.of("measure"));

  private static final String OTHER = "other";

  static Scale of(String measure) {
    @Nullable Row known = TABLE.row(measure);
    return new Scale(known == null ? Objects.requireNonNull(TABLE.row(OTHER)) : known);
  }

  /**
   * @param typical a usual value of the measure, for what is judged by its own size
   */
  double width(double typical) {
    double scale = row.number("scale");
    return row.yes("relative") ? scale * Math.max(Math.abs(typical), 1e-9) : scale;
  }
}
