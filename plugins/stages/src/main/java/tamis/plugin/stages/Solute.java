package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** What is dissolved in the water of a food. */
public enum Solute {
  SUCROSE,
  GLUCOSE,
  FRUCTOSE,
  MALTOSE,
  LACTOSE,
  SORBITOL,
  XYLITOL,
  GLYCEROL,
  SALT;

  static final Table TABLE =
      TableReader.read(
          Solute.class,
          "/tamis/plugin/stages/solutes.csv",
          "Constants of Norrish and molar masses of solutes",
          List.of("solute"));

  Row row() {
    Row row = TABLE.row(name().toLowerCase(Locale.ROOT));
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "solute", this + " is missing");
    }
    return row;
  }

  double k() {
    return row().number("norrish_k");
  }

  double gramsPerMole() {
    return row().number("grams_per_mole");
  }
}
