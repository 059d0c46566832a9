package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** Where heat is lost, with how fast; figures of practice, shown so that they can be doubted. */
enum Surface {
  PAN,
  STREAM,
  ICE_BATH,
  REFRIGERATOR;

  static final Table TABLE =
      TableReader.read(
          Surface.class,
          "/tamis/plugin/stages/room-loss.csv",
          "How fast pans, streams and bowls lose heat",
          List.of("surface"));

  private Row row() {
    Row row = TABLE.row(name().toLowerCase(Locale.ROOT).replace('_', '-'));
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "surface", this + " is missing");
    }
    return row;
  }

  /** W/(m²·K). */
  Spread transfer() {
    Row row = row();
    return new Spread(
        row.number("low_w_per_m2_k"),
        row.number("typical_w_per_m2_k"),
        row.number("high_w_per_m2_k"));
  }

  /** m² around so many kilograms: vessels of one shape. */
  double area(double kilograms) {
    return row().number("area_m2_per_kg_two_thirds") * Math.pow(kilograms, 2.0 / 3);
  }

  void cite(Notes notes, String pointer) {
    notes.cite(row(), pointer);
  }
}
