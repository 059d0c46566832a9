package tamis.engine.quantity;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Nearest;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * All units, from {@code units.csv}, and the names they go by. A name in another case than the
 * table's is found too, unless the table tells both cases apart (T and t).
 */
public final class Units {
  private static final Units STANDARD =
      new Units(
          TableReader.read(
              Units.class,
              "/tamis/engine/units.csv",
              "Units with their exact factors and the names they go by",
              List.of("unit", "measures", "dimension")),
          TableReader.read(
              Units.class,
              "/tamis/engine/pieces.csv",
              "Masses of pieces",
              List.of("ingredient", "piece", "state")));

  private final Table table;
  private final Map<String, Measured> byName = new HashMap<>();
  private final Map<String, Measured> byLowerCase = new HashMap<>();
  private final Set<String> symbols = new TreeSet<>();

  /** One name's unit: the same everywhere, or one for each system of measures. */
  private record Measured(String name, @Nullable Unit everywhere, Map<Measures, Unit> bySystem) {}

  private Units(Table table, Table pieces) {
    this.table = table;
    Map<String, Measured> bySymbol = new LinkedHashMap<>();
    for (Row row : table.rows()) {
      add(bySymbol, row);
    }
    bySymbol.forEach((symbol, unit) -> name(symbol, unit));
    for (Row row : table.rows()) {
      Measured unit = bySymbol.get(row.text("unit"));
      if (unit != null) {
        split(row.textOrNull("aliases")).forEach(alias -> name(withoutLanguage(alias), unit));
      }
      for (String code : split(row.textOrNull("ucum"))) {
        byName.putIfAbsent(code, new Measured(code, unit(row), Map.of()));
      }
    }
    for (Row row : pieces.rows()) {
      String piece = row.text("piece");
      Unit unit = new Unit(piece, Dimension.PIECE, 1, 0, false, row);
      Measured measured = new Measured(piece, unit, Map.of());
      name(piece, measured);
      name(plural(piece), measured);
    }
  }

  /** The built-in units. */
  public static Units standard() {
    return STANDARD;
  }

  public Table table() {
    return table;
  }

  /** All printed symbols. */
  public Set<String> symbols() {
    return symbols;
  }

  /** The name under which a unit is kept, if {@code text} names one; else null. */
  public @Nullable String name(String text) {
    @Nullable Measured found = find(text);
    return found == null ? null : found.name();
  }

  /**
   * The name under which a unit is kept.
   *
   * @throws Refusal {@code unknown-unit} if no unit has the name
   */
  public String known(String text) {
    return measured(text).name();
  }

  /** Whether the unit of this name depends on whose measures are meant. */
  public boolean dependsOnMeasures(String name) {
    @Nullable Measured found = find(name);
    return found != null && found.everywhere() == null;
  }

  /** What the unit of this name measures. */
  public Dimension dimension(String name) {
    Measured found = measured(name);
    return found.everywhere() != null
        ? found.everywhere().dimension()
        : found.bySystem().values().iterator().next().dimension();
  }

  /**
   * The unit of this name in a system of measures.
   *
   * @throws Refusal {@code unknown-unit} if no unit has the name, or the system lacks it
   */
  public Unit unit(String name, Measures measures) {
    Measured found = measured(name);
    if (found.everywhere() != null) {
      return found.everywhere();
    }
    @Nullable Unit unit = found.bySystem().get(measures);
    if (unit == null) {
      String systems =
          String.join(", ", found.bySystem().keySet().stream().map(Units::text).toList());
      throw new Refusal(
          new Fault(
              FaultCode.UNKNOWN_UNIT,
              "",
              name,
              "measures " + systems,
              "the "
                  + text(measures)
                  + " measures have no `"
                  + name
                  + "`; it is known in "
                  + systems));
    }
    return unit;
  }

  private Measured measured(String name) {
    @Nullable Measured found = find(name);
    if (found == null) {
      throw new Refusal(
          new Fault(
              FaultCode.UNKNOWN_UNIT,
              "",
              name,
              String.join(", ", symbols),
              "`" + name + "` is no unit known here" + Nearest.suggestion(name, byName.keySet())));
    }
    return found;
  }

  private @Nullable Measured find(String name) {
    @Nullable Measured exact = byName.get(name);
    if (exact != null) {
      return exact;
    }
    String lower = name.toLowerCase(Locale.ROOT);
    @Nullable Measured found = byLowerCase.get(lower);
    boolean abbreviated = found == null && lower.endsWith(".");
    return abbreviated ? byLowerCase.get(lower.substring(0, lower.length() - 1)) : found;
  }

  private void add(Map<String, Measured> bySymbol, Row row) {
    String symbol = row.text("unit");
    symbols.add(symbol);
    Unit unit = unit(row);
    @Nullable String system = row.textOrNull("measures");
    if (system == null) {
      if (unit.dimension() != Dimension.TEMPERATURE_DIFFERENCE) {
        bySymbol.put(symbol, new Measured(symbol, unit, Map.of()));
      }
      return;
    }
    if (system.equals("us-label")) {
      return; // only its UCUM code names it: nobody bakes with a labelling cup
    }
    bySymbol
        .computeIfAbsent(
            symbol, s -> new Measured(s, null, new EnumMap<Measures, Unit>(Measures.class)))
        .bySystem()
        .put(Measures.valueOf(system.toUpperCase(Locale.ROOT)), unit);
  }

  private void name(String name, Measured unit) {
    byName.putIfAbsent(name, unit);
    byLowerCase.putIfAbsent(name.toLowerCase(Locale.ROOT), unit);
  }

  private static Unit unit(Row row) {
    @Nullable Double offset = row.numberOrNull("offset");
    return new Unit(
        row.text("unit"),
        dimension(row),
        row.number("factor"),
        offset == null ? 0 : offset,
        row.yes("imprecise"),
        row);
  }

  private static Dimension dimension(Row row) {
    String name = row.text("dimension");
    try {
      return Dimension.valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
    } catch (IllegalArgumentException unknown) {
      throw new BadTable(row.table(), row.line(), "dimension", name + " is no dimension");
    }
  }

  private static String plural(String piece) {
    if (piece.endsWith("leaf")) {
      return piece.substring(0, piece.length() - 1) + "ves";
    }
    boolean hissing = piece.endsWith("x") || piece.endsWith("ch") || piece.endsWith("sh");
    return piece + (hissing ? "es" : "s");
  }

  private static List<String> split(@Nullable String cell) {
    return cell == null ? List.of() : List.of(cell.split(";"));
  }

  private static String withoutLanguage(String alias) {
    int colon = alias.indexOf(':');
    return colon == 2 ? alias.substring(3) : alias;
  }

  private static String text(Measures measures) {
    return measures.name().toLowerCase(Locale.ROOT);
  }
}
