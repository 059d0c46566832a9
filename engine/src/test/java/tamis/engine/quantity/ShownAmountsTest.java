package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures as a person reads them from a scale, a spoon or a cup. */
class ShownAmountsTest {
  @ParameterizedTest(name = "{0} g is shown as {1}")
  @CsvSource({
    "0, 0 g",
    "0.04, 0 g",
    "0.05, 0.1 g",
    "2.449, 2.4 g",
    "9.94, 9.9 g",
    "9.96, 10 g",
    "10.4, 10 g",
    "340.5, 341 g",
    "999.4, 999 g",
    "999.6, 1 kg",
    "1002.4, 1 kg",
    "1002.5, 1.005 kg",
    "1255, 1.255 kg",
    "9998, 10 kg",
    "12344.9, 12.34 kg",
    "12345, 12.35 kg"
  })
  void a_mass_is_rounded_to_the_step_of_a_scale(double grams, String shown) {
    assertThat(ScaleStep.shown(grams)).isEqualTo(shown);
    assertThat(ScaleStep.shownVolume(grams)).isEqualTo(shown.replace("kg", "l").replace("g", "ml"));
  }

  @ParameterizedTest(name = "{0} by {1} is {2}")
  @CsvSource({"0.15, 0.1, 0.2", "0.25, 0.1, 0.3", "2.5, 5, 5", "2.4, 5, 0", "1234.5, 0.5, 1234.5"})
  void halves_go_up_as_they_are_printed(double grams, double step, double rounded) {
    assertThat(ScaleStep.round(grams, step)).isEqualTo(rounded);
  }

  @ParameterizedTest(name = "{0} ml is {1}")
  @CsvSource({
    "0, 0 tsp",
    "0.1, less than 1/8 tsp",
    "0.31, 1/8 tsp",
    "0.616115, 1/8 tsp",
    "2.4644608, 1/2 tsp",
    "4.92892159375, 1 tsp",
    "7.4, 1 1/2 tsp",
    "14.78676478125, 1 tbsp",
    "22.2, 1 1/2 tbsp",
    "44.36, 3 tbsp",
    "59.147, 1/4 cup",
    "177.441, 3/4 cup",
    "236.5882365, 1 cup",
    "532.3, 2 1/4 cup"
  })
  void a_volume_is_told_in_cups_and_spoons(double millilitres, String shown) {
    assertThat(KitchenMeasure.cupsAndSpoons(millilitres)).isEqualTo(shown);
  }

  @ParameterizedTest(name = "{0} g is {1}")
  @CsvSource({
    "0, 0 oz",
    "0.5, less than 1/8 oz",
    "3.6, 1/8 oz",
    "28.349523125, 1 oz",
    "42.5, 1 1/2 oz",
    "449, 15 7/8 oz",
    "453, 1 lb",
    "453.59237, 1 lb",
    "500, 1 lb 1 1/2 oz",
    "900, 1 lb 15 1/2 oz",
    "906, 2 lb",
    "907.18474, 2 lb",
    "2267.96185, 5 lb"
  })
  void a_mass_is_told_in_pounds_and_ounces(double grams, String shown) {
    assertThat(KitchenMeasure.poundsAndOunces(grams)).isEqualTo(shown);
  }
}
