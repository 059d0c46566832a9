package tamis.engine.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.kitchen.Pantry;

/** The tables that come with the engine: no row may be bad, also where nothing asks for it. */
class TablesTest {
  private static final Set<String> BASES =
      Set.of("measured", "regulation", "standard", "handbook", "common practice", "memory");

  /** Columns with a unit in their name, and those known to be numbers without one. */
  private static final Pattern NUMBERS =
      Pattern.compile(
          ".*_(g|mg|ug|kcal|kj|c|cm|ml|percent|per_ml|per_g|per_whole)|factor|offset|fahrenheit"
              + "|celsius_exact|measured_grams|order|percent|capacity_ml");

  private static final Pattern PLAIN_NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");
  private static final Pattern DATE = Pattern.compile("\\d{4}(-\\d{2}){0,2}");

  private static List<Table> tables() {
    return Pantry.builtInTables();
  }

  private static List<Table> tablesOfFacts() {
    return tables().stream().filter(table -> table.columns().contains("source")).toList();
  }

  private static Table table(String name) {
    return tables().stream().filter(t -> t.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void all_tables_are_there_under_names_of_their_own() {
    assertThat(tables().stream().map(Table::name))
        .doesNotHaveDuplicates()
        .contains(
            "allergens",
            "by-products",
            "composition-parts",
            "densities",
            "eggs",
            "gas-marks",
            "ingredients",
            "names",
            "pans",
            "pieces",
            "sources",
            "units",
            "windows")
        .hasSizeGreaterThanOrEqualTo(13);
    assertThat(tablesOfFacts()).hasSize(tables().size() - 2);
    assertThat(tables()).allSatisfy(t -> assertThat(t.title()).isNotBlank());
    assertThat(tables()).allSatisfy(t -> assertThat(t.rows()).isNotEmpty());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tables")
  void keys_are_unique_and_find_their_row(Table table) {
    Map<String, Row> byKey = new HashMap<>();
    for (Row row : table.rows()) {
      assertThat(byKey.put(row.key(), row)).as(row.key()).isNull();
      assertThat(table.row(row.key())).isSameAs(row);
      assertThat(row.table()).isEqualTo(table.name());
    }
    assertThat(table.row("no such key")).isNull();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tablesOfFacts")
  void every_fact_says_where_it_comes_from_and_since_when(Table table) {
    assertThat(table.columns()).endsWith("source", "locator", "basis", "as_of");
    for (Row row : table.rows()) {
      String at = table.name() + ", line " + row.line();
      assertThat(table.source(row)).as(at).isNotNull();
      assertThat(row.text("locator")).as(at).isNotBlank();
      assertThat(BASES).as(at).contains(row.text("basis"));
      assertThat(row.text("as_of")).as(at).matches(DATE);
    }
  }

  @Test
  void figures_from_memory_and_of_common_practice_say_so_in_their_basis() {
    for (Table table : tablesOfFacts()) {
      for (Row row : table.rows()) {
        if (row.source().equals("memory") || row.source().equals("common-practice")) {
          assertThat(row.text("basis"))
              .as(table.name() + ", line " + row.line())
              .isIn("memory", "common practice");
        }
      }
    }
  }

  @Test
  void every_source_is_used() {
    Set<String> used =
        tablesOfFacts().stream()
            .flatMap(table -> table.rows().stream())
            .map(Row::source)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(Sources.table().rows().stream().map(Row::key)).isSubsetOf(used);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tables")
  void figures_are_plain_decimals(Table table) {
    List<String> numbers =
        table.columns().stream().filter(c -> NUMBERS.matcher(c).matches()).toList();
    for (Row row : table.rows()) {
      for (String column : numbers) {
        String cell = row.textOrNull(column);
        if (cell != null) {
          assertThat(cell).as("line %s, column %s", row.line(), column).matches(PLAIN_NUMBER);
          assertThat(row.number(column)).isEqualTo(Double.parseDouble(cell));
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}: low, typical and high of {1}")
  @CsvSource({"densities, g_per_ml", "pieces, g"})
  void spreads_contain_what_is_typical(String name, String unit) {
    for (Row row : table(name).rows()) {
      assertThat(row.number("typical_" + unit))
          .as(name + ", line " + row.line())
          .isPositive()
          .isBetween(row.number("low_" + unit), row.number("high_" + unit));
    }
  }
}
