package tamis.plugin.dough;

import java.util.List;
import tamis.engine.note.Notes;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The figures that dough temperature rests on, each with its source. */
final class DoughConstants {
  static final Table TABLE =
      TableReader.read(
          DoughConstants.class,
          "/tamis/plugin/dough/dough-constants.csv",
          "Constants of dough temperature: heat of water and ice, bounds of the trade",
          List.of("constant"));
  static final Table MIXERS =
      TableReader.read(
          DoughConstants.class,
          "/tamis/plugin/dough/mixer-friction.csv",
          "Usual frictions by the way of mixing, counted with three temperatures",
          List.of("mixing"));

  private DoughConstants() {}

  static double value(String constant) {
    return row(constant).number("value");
  }

  /** The value; the figure at {@code pointer} rests on it. */
  static double cited(String constant, Notes notes, String pointer) {
    Row row = row(constant);
    notes.cite(row, pointer);
    return row.number("value");
  }

  private static Row row(String constant) {
    Row row = TABLE.row(constant);
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "constant", "has no " + constant);
    }
    return row;
  }
}
