package tamis.engine.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableReaderTest {
  private static Table read(String name) {
    return TableReader.read(
        TableReaderTest.class, "/tamis/engine/table/" + name + ".csv", name, List.of("thing"));
  }

  @Test
  void quotes_doubled_quotes_line_ends_and_a_byte_order_mark_are_read_as_rfc_4180_says() {
    Table table = read("good");
    assertThat(table.name()).isEqualTo("good");
    assertThat(table.columns())
        .containsExactly("thing", "note", "grams", "source", "locator", "basis", "as_of");
    assertThat(table.rows()).hasSize(2);
    Row loaf = table.row("loaf");
    assertThat(loaf.text("note")).isEqualTo("a \"tin\" loaf, sliced");
    assertThat(loaf.text("locator")).isEqualTo("page 1,\r\nlower half");
    assertThat(loaf.number("grams")).isEqualTo(750);
    assertThat(loaf.line()).isEqualTo(2);
    assertThat(table.row("roll").line()).as("the row above takes two lines").isEqualTo(4);
  }

  @Test
  void an_empty_cell_is_absent_and_cells_stand_in_the_order_of_the_columns() {
    Row roll = read("good").row("roll");
    assertThat(roll.textOrNull("note")).isNull();
    assertThat(roll.numberOrNull("note")).isNull();
    assertThat(roll.yes("note")).isFalse();
    assertThat(roll.textOrNull("no such column")).isNull();
    assertThat(roll.cells().keySet())
        .containsExactly("thing", "grams", "source", "locator", "basis", "as_of");
    assertThat(roll.cells())
        .isEqualTo(
            Map.of(
                "thing",
                "roll",
                "grams",
                "60",
                "source",
                "memory",
                "locator",
                "page 2",
                "basis",
                "measured",
                "as_of",
                "2026-03"));
  }

  @ParameterizedTest(name = "{0}: line {1}, column {2}")
  @CsvSource(
      nullValues = "-",
      value = {
        "unknown-source,   3, source,  nobody is in no list of sources",
        "after-line-break, 4, source,  nobody is in no list of sources",
        "unknown-basis,    2, basis,   must be one of",
        "no-locator,       2, locator, is empty",
        "no-as-of,         2, as_of,   is empty",
        "twice,            4, thing,   loaf stands in line 2 too",
        "short-row,        3, thing,   2 fields under 6 columns",
        "blank-line,       2, thing,   1 fields under 6 columns",
        "open-quote,       2, -,       a quoted field is not closed",
        "after-quote,      2, -,       ends neither with a comma nor with the line",
        "inner-quote,      2, -,       a quote inside a field",
        "lone-return,      2, -,       ends neither with a comma nor with the line",
        "no-key,           1, thing,   is no column",
        "same-column,      1, grams,   a column needs a name of its own",
        "empty,            1, -,       there is no heading",
        "not-utf8,         0, -,       is no UTF-8",
        "not-there,        0, -,       is not there"
      })
  void the_first_bad_row_is_named_by_file_line_and_column(
      String file, int line, String column, String why) {
    assertThatThrownBy(() -> read(file))
        .isInstanceOf(BadTable.class)
        .hasMessageContaining(file)
        .hasMessageContaining(
            ", line " + line + ", column " + (column == null ? "" : column) + ": ")
        .hasMessageContaining(why);
  }

  @ParameterizedTest
  @CsvSource({
    "word-for-number, is no number: heavy",
    "huge-number,     is no number: 1e16",
    "not-a-number,    is no number: NaN",
    "no-number,       is empty"
  })
  void a_cell_that_is_no_number_is_named_when_it_is_read_as_one(String file, String why) {
    Row row = read(file).rows().get(0);
    assertThatThrownBy(() -> row.number("grams"))
        .isInstanceOf(BadTable.class)
        .hasMessage(file + ", line 2, column grams: " + why);
  }

  @Test
  void a_cell_that_is_neither_yes_nor_no_is_named() {
    Row row = read("maybe").rows().get(0);
    assertThatThrownBy(() -> row.yes("grams"))
        .isInstanceOf(BadTable.class)
        .hasMessage("maybe, line 2, column grams: must be yes, no or empty, was maybe");
  }

  @Test
  void a_table_may_bring_sources_of_its_own_beside_it_and_name_the_engines_too() {
    Table table = read("own/weights");
    assertThat(table.source(table.row("loaf")))
        .isEqualTo(
            new Source(
                "bakery-book",
                "The day book of the bakery",
                "2026",
                "the village bakery",
                "figures only"));
    assertThat(table.source(table.row("roll")).publisher()).isEqualTo("this project");
  }

  @Test
  void a_key_of_the_engines_sources_cannot_be_given_another_meaning() {
    assertThatThrownBy(() -> read("taken/weights"))
        .isInstanceOf(BadTable.class)
        .hasMessageStartingWith("sources, line 2, column key: ucum is already ");
  }
}
