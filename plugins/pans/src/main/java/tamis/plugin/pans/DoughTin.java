package tamis.plugin.pans;

import java.util.List;
import tamis.engine.quantity.Spread;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Bread tins are filled by the mass of dough, not by how full they look.
 *
 * @param row of the table
 */
record DoughTin(Row row) {
  static final Table TABLE =
      TableReader.read(
          DoughTin.class,
          "/tamis/plugin/pans/dough-tins.csv",
          "Millilitres of tin for a gram of dough",
          List.of("dough"));

  static DoughTin of(String dough) {
    return new DoughTin(Fill.row(TABLE, dough, "/dough", "a way of baking a loaf"));
  }

  /** Grams of dough for a tin; a gram that needs much tin is the low end. */
  Spread grams(double millilitres) {
    return new Spread(
        millilitres / row.number("high_ml_per_g"),
        millilitres / row.number("typical_ml_per_g"),
        millilitres / row.number("low_ml_per_g"));
  }
}
