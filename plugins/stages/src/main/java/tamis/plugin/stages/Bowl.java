package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The vessel that is warmed or cooled along. */
public record Bowl(
    @Described(value = "Mass of the empty bowl", moreThan = "0 g", example = "1100 g") Mass mass,
    @Described(value = "What it is made of", example = "steel") Material material,
    @Described(
            value = "Its temperature before",
            atLeast = "-40 °C",
            atMost = "150 °C",
            example = "21 °C")
        Temperature temperature) {
  static final Table TABLE =
      TableReader.read(
          Bowl.class,
          "/tamis/plugin/stages/bowls.csv",
          "Specific heat of what bowls are made of",
          List.of("material"));

  /** What bowls are made of. */
  public enum Material {
    STEEL,
    COPPER,
    ALUMINIUM,
    GLASS,
    CERAMIC,
    PLASTIC
  }

  Row row() {
    Row row = TABLE.row(material.name().toLowerCase(Locale.ROOT));
    if (row == null) {
      throw new BadTable(TABLE.name(), 1, "material", material + " is missing");
    }
    return row;
  }

  double kilojoulesPerKelvin() {
    return mass.grams() / 1000 * row().number("specific_heat_kj_per_kg_k");
  }
}
