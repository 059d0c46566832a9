package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.AggregateWith;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.ingredient.IngredientTables;

/** Our conversions against what GNU units printed for them. */
class GnuUnitsTest {
  @ParameterizedTest(name = "{0} {7} {8} in {1} ({2})")
  @CsvFileSource(resources = "gnu-units.csv", numLinesToSkip = 1, encoding = "UTF-8")
  void conversions_agree_with_what_was_printed(@AggregateWith(GnuUnits.Reader.class) GnuUnits row) {
    assertThat(row.ours()).isEqualTo(row.printed(), within(row.room(row.printed())));
  }

  @ParameterizedTest(name = "mark {0}")
  @CsvSource({
    "1/2, 250",
    "1, 275",
    "2, 300",
    "3, 325",
    "4, 350",
    "5, 375",
    "6, 400",
    "7, 425",
    "8, 450",
    "9, 475"
  })
  void oven_marks_agree_with_what_gasmark_printed(String mark, double fahrenheit) {
    assertThat(IngredientTables.GAS_MARKS.row(mark).number("fahrenheit")).isEqualTo(fahrenheit);
  }

  @Test
  void the_exact_celsius_of_a_mark_is_that_of_its_fahrenheit() {
    assertThat(IngredientTables.GAS_MARKS.rows())
        .hasSize(11)
        .allSatisfy(
            row ->
                assertThat(row.number("celsius_exact"))
                    .isEqualTo(
                        Temperature.parse(row.text("fahrenheit") + " °F").celsius(), within(1e-8)));
  }
}
