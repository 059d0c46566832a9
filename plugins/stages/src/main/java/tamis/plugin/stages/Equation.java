package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import tamis.engine.note.Notes;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The equations that answers rest on, each a row with its source. */
enum Equation {
  WATER_BOILING,
  AIR_PRESSURE,
  SUCROSE_ACTIVITY,
  SUGAR_HEAT,
  STEADY_BOILING,
  NEWTON_COOLING,
  NORRISH,
  MONEY_BORN,
  LETHALITY;

  static final Table TABLE =
      TableReader.read(
          Equation.class,
          "/tamis/plugin/stages/stage-equations.csv",
          "Equations that stages are worked out by",
          List.of("equation"));

  void cite(Notes notes, String pointer) {
    String key = name().toLowerCase(Locale.ROOT).replace('_', '-');
    Row row = TABLE.row(key);
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "equation", key + " is missing");
    }
    notes.cite(row, pointer);
  }
}
