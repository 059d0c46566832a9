package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javax.measure.UnconvertibleException;
import javax.measure.format.UnitFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import systems.uom.ucum.format.UCUMFormat;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.table.Row;

class UnitsTest {
  private static final Units UNITS = Units.standard();
  private static final UnitFormat UCUM = UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);
  private static final double EXACT = 1e-9 * 100;

  /** UCUM prints mercury with six digits (133.322 kPa to the metre), NIST and we with nine. */
  private static final Set<String> MERCURY = Set.of("mm[Hg]", "[in_i'Hg]");

  /** The labelling units, which that library does not know; published-units.csv has them. */
  private static final Set<String> NOT_IN_THE_LIBRARY =
      Set.of("[oz_m]", "[cup_m]", "[tbs_m]", "[tsp_m]", "[foz_m]");

  /** The canonical units of our dimensions in UCUM. */
  private static final Map<Dimension, String> CANONICAL =
      Map.of(
          Dimension.MASS, "g",
          Dimension.VOLUME, "mL",
          Dimension.TEMPERATURE, "K",
          Dimension.LENGTH, "m",
          Dimension.ENERGY, "J",
          Dimension.POWER, "W",
          Dimension.PRESSURE, "Pa",
          Dimension.DENSITY, "g/mL",
          Dimension.TIME, "s",
          Dimension.RATIO, "1");

  static List<Arguments> codes() {
    List<Arguments> codes = new ArrayList<>();
    for (Row row : UNITS.table().rows()) {
      String cell = row.textOrNull("ucum");
      if (cell != null) {
        for (String code : cell.split(";")) {
          codes.add(Arguments.of(code, row.text("unit")));
        }
      }
    }
    return codes;
  }

  @ParameterizedTest(name = "{0} of {1}")
  @MethodSource("codes")
  void every_ucum_code_stands_for_what_the_units_library_says(String code, String symbol) {
    Unit ours = UNITS.unit(code, Measures.US);
    assertThat(ours.symbol()).isEqualTo(symbol);
    if (code.equals("{each}") || NOT_IN_THE_LIBRARY.contains(code)) {
      assertThat(ours.factor()).isPositive();
      return;
    }
    javax.measure.Unit<?> theirs = UCUM.parse(code);
    javax.measure.Unit<?> canonical = UCUM.parse(CANONICAL.get(ours.dimension()));
    double tolerance = MERCURY.contains(code) ? 1e-5 * 100 : EXACT;
    for (double amount : new double[] {-40, 0, 1, 350}) {
      double expected = converted(theirs, canonical, amount);
      assertThat(ours.toCanonical(amount)).isCloseTo(expected, withinPercentage(tolerance));
      assertThat(ours.fromCanonical(ours.toCanonical(amount))).isEqualTo(amount, within(1e-9));
    }
  }

  private static double converted(
      javax.measure.Unit<?> from, javax.measure.Unit<?> to, double amount) {
    try {
      return from.getConverterToAny(to).convert((Number) amount).doubleValue();
    } catch (UnconvertibleException | javax.measure.IncommensurableException wrong) {
      throw new AssertionError(from + " is no " + to, wrong);
    }
  }

  @Test
  void the_library_was_asked_about_most_codes() {
    assertThat(codes()).hasSizeGreaterThanOrEqualTo(70);
  }

  @ParameterizedTest(name = "{0} {1} is {2} ({3})")
  @CsvFileSource(resources = "published-units.csv", numLinesToSkip = 1, encoding = "UTF-8")
  void factors_are_the_published_ones(
      String unit, String measures, double canonical, String source, String basis) {
    assertThat(UNITS.unit(unit, measures(measures)).factor()).isEqualTo(canonical);
    assertThat(UNITS.dependsOnMeasures(unit)).isEqualTo(measures != null);
  }

  private static Measures measures(String text) {
    return text == null ? Measures.US : Measures.valueOf(text.toUpperCase(Locale.ROOT));
  }

  @Test
  void every_row_is_reached_by_its_symbol_by_each_alias_and_by_each_code() {
    Map<String, String> ownerOfAlias = new HashMap<>();
    for (Row row : UNITS.table().rows()) {
      String symbol = row.text("unit");
      if (row.text("dimension").equals("temperature-difference")) {
        continue; // read by TemperatureDifference under the names of the temperatures
      }
      String system = row.textOrNull("measures");
      boolean label = "us-label".equals(system);
      Unit reached =
          UNITS.unit(label ? row.text("ucum") : symbol, label ? Measures.US : measures(system));
      assertThat(reached.row()).as(symbol + ", line " + row.line()).isEqualTo(row);
      for (String alias : aliases(row)) {
        assertThat(UNITS.name(alias)).as(alias).isEqualTo(symbol);
        String owner = ownerOfAlias.putIfAbsent(alias, symbol);
        assertThat(owner == null || owner.equals(symbol))
            .as(alias + " is said of " + owner + " and of " + symbol)
            .isTrue();
      }
    }
  }

  private static List<String> aliases(Row row) {
    String cell = row.textOrNull("aliases");
    List<String> aliases = new ArrayList<>();
    for (String alias : cell == null ? new String[0] : cell.split(";")) {
      aliases.add(alias.indexOf(':') == 2 ? alias.substring(3) : alias);
    }
    return aliases;
  }

  @Test
  void a_piece_and_its_plural_are_known_and_none_is_hidden_by_another_unit() {
    assertThat(List.of("leaf", "leaves", "LEAVES", "bunch", "bunches", "box", "boxes", "slices"))
        .allSatisfy(p -> assertThat(UNITS.dimension(p)).isEqualTo(Dimension.PIECE));
    assertThat(UNITS.name("leaves")).isEqualTo("leaf");
    assertThat(UNITS.name("leafs")).isNull();
    for (Row row : tamis.engine.ingredient.IngredientTables.PIECES.rows()) {
      String piece = row.text("piece");
      assertThat(UNITS.name(piece)).as("line " + row.line()).isEqualTo(piece);
    }
  }

  @Test
  void capitals_matter_only_where_the_table_tells_them_apart() {
    assertThat(UNITS.name("T")).isEqualTo("tbsp");
    assertThat(UNITS.name("t")).isEqualTo("tsp");
    assertThat(UNITS.name("CUPS")).isEqualTo("cup");
    assertThat(UNITS.name("Kg")).isEqualTo("kg");
    assertThat(UNITS.name("ML")).isEqualTo("ml");
  }

  @ParameterizedTest(name = "{0} in {1}")
  @CsvSource({"pint, metric, US, UK", "gill, au, US, UK", "quart, jp, US, UK", "cup, , ,"})
  void a_unit_that_a_system_lacks_is_refused_with_the_systems_that_have_it(
      String unit, String measures, String one, String other) {
    if (measures == null) {
      for (Measures system : Measures.values()) {
        assertThat(UNITS.unit(unit, system).symbol()).isEqualTo(unit);
      }
      return;
    }
    Fault fault = refusal(unit, measures(measures));
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_UNIT);
    assertThat(fault.message()).containsIgnoringCase(one).containsIgnoringCase(other);
  }

  @Test
  void an_unknown_unit_is_refused_with_what_is_near_and_all_that_there_are() {
    Fault fault = refusal("tablspoon", Measures.US);
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_UNIT);
    assertThat(fault.given()).isEqualTo("tablspoon");
    assertThat(fault.allowed()).contains("tbsp", "ml", "imperial pint");
    assertThat(fault.message()).contains("did you mean tablespoon");
  }

  @Test
  void imprecise_measures_are_marked() {
    assertThat(List.of("pinch", "dash", "smidgen", "drop"))
        .allSatisfy(u -> assertThat(UNITS.unit(u, Measures.US).imprecise()).isTrue());
    assertThat(UNITS.unit("tsp", Measures.US).imprecise()).isFalse();
  }

  @Test
  void a_difference_of_temperatures_has_no_offset() {
    assertThat(TemperatureDifference.parse("36 °F").kelvins()).isEqualTo(20, within(1e-12));
    assertThat(TemperatureDifference.parse("20 °C").kelvins()).isEqualTo(20);
    assertThat(Temperature.parse("36 °F").celsius()).isEqualTo(2.222222222, within(1e-9));
  }

  private static Fault refusal(String unit, Measures measures) {
    return catchThrowableOfType(Refusal.class, () -> UNITS.unit(unit, measures)).faults().get(0);
  }
}
