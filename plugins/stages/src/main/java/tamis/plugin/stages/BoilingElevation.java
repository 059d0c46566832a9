package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * The older table of boiling points of sugar solutions. Between 70 % and 82 % it lies 1.5 °C to 3
 * °C above the modern equation, so both are shown.
 */
final class BoilingElevation {
  static final Table TABLE =
      TableReader.read(
          BoilingElevation.class,
          "/tamis/plugin/stages/boiling-elevation.csv",
          "How much hotter than water a sugar solution boils, an older table",
          List.of("sucrose_percent"));

  private BoilingElevation() {}

  /** In K, or null outside of the table. */
  static @Nullable Double at(double percent, Notes notes, String pointer) {
    @Nullable Row below = null;
    for (Row row : TABLE.rows()) {
      double here = row.number("sucrose_percent");
      if (percent <= here) {
        if (below == null) {
          return null;
        }
        notes.cite(row, pointer);
        double from = below.number("sucrose_percent");
        double part = (percent - from) / (here - from);
        double low = below.number("elevation_c");
        return low + part * (row.number("elevation_c") - low);
      }
      below = row;
    }
    return null;
  }
}
