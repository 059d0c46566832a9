package example.icecreammix;

import java.util.List;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The facts that a mix sheet rests on. */
final class MixTables {
  static final Table SOLUTES =
      table("ice-cream-solutes.csv", "Sucrose equivalents of solutes, a gram", "solute");
  static final Table SYRUPS =
      table("ice-cream-syrups.csv", "Sucrose equivalents of syrups, 100 g", "ingredient");
  static final Table MILK_SOLIDS =
      table("ice-cream-milk-solids.csv", "Milk solids not fat, 100 g", "ingredient");
  static final Table CONSTANTS =
      table("ice-cream-constants.csv", "Constants of the mix sheet", "constant");
  static final Table WINDOWS =
      table("ice-cream-windows.csv", "Usual windows of frozen mixes", "style", "measure");

  private MixTables() {}

  static Row constant(String name) {
    Row row = CONSTANTS.row(name);
    if (row == null) {
      throw new IllegalStateException(name);
    }
    return row;
  }

  private static Table table(String file, String title, String... keys) {
    return TableReader.read(MixTables.class, file, title, List.of(keys));
  }
}
