package tamis.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Refusal;

class ThermalPropertiesTest {

  @ParameterizedTest(name = "{0}: {7} kJ/(kg·K)")
  @CsvFileSource(resources = "foods.csv", numLinesToSkip = 1)
  void specific_heat_is_that_of_the_published_table_of_foods(
      String food,
      double water,
      double protein,
      double fat,
      double carbohydrate,
      double fibre,
      double ash,
      double specificHeat,
      double latentHeat,
      String source) {
    Proximates made = new Proximates(water, protein, fat, carbohydrate, fibre, ash);
    assertThat(ThermalProperties.specificHeat(made, 20)).isCloseTo(specificHeat, within(0.006));
    assertThat(ThermalProperties.HEAT_OF_FUSION * water / 100).isCloseTo(latentHeat, within(1.0));
  }

  @ParameterizedTest(name = "{0} at 20 °C: {1}, {2}, {3}")
  @CsvSource({
    "water, 4.1766, 995.74, 0.6037",
    "protein, 2.0319, 1319.53, 0.2016",
    "fat, 2.0117, 917.24, 0.1751",
    "carbohydrate, 1.5857, 1592.89, 0.2274",
    "ash, 1.1289, 2418.19, 0.3565"
  })
  void each_part_alone_has_its_own_figures(
      String part, double specificHeat, double density, double conductivity) {
    Proximates pure = pure(part);
    assertThat(ThermalProperties.specificHeat(pure, 20)).isCloseTo(specificHeat, within(1e-4));
    assertThat(ThermalProperties.density(pure, 20)).isCloseTo(density, within(0.01));
    assertThat(ThermalProperties.conductivity(pure, 20)).isCloseTo(conductivity, within(1e-4));
  }

  /** Fat, carbohydrate and water as some copies misprint them. */
  @ParameterizedTest(name = "{0} at {1} °C is not {2}")
  @CsvSource({
    "fat, 60, 1.97576", // B written 1.4733e-4
    "carbohydrate, 20, 0.22742", // the row of conductivity
    "water, 20, 4.1308" // A written 4.1289
  })
  void known_misprints_are_not_followed(String part, double celsius, double misprint) {
    assertThat(ThermalProperties.specificHeat(pure(part), celsius))
        .isNotCloseTo(misprint, within(0.02));
  }

  @Test
  void heat_content_is_the_integral_of_the_specific_heat() {
    Proximates yolk = new Proximates(48.81, 16.76, 30.87, 1.78, 0.0, 1.77);
    double sum = 0;
    for (int i = 0; i < 1000; i++) {
      sum += ThermalProperties.specificHeat(yolk, (i + 0.5) * 0.09) * 0.09;
    }
    assertThat(ThermalProperties.heatContent(yolk, 90)).isCloseTo(sum, within(1e-5));
  }

  @Test
  void what_was_not_told_is_taken_to_be_like_the_rest() {
    Proximates half = new Proximates(25.0, null, null, 25.0, null, null);
    Proximates whole = new Proximates(50.0, null, null, 50.0, null, null);
    assertThat(ThermalProperties.specificHeat(half, 30))
        .isCloseTo(ThermalProperties.specificHeat(whole, 30), within(1e-12));
  }

  @Test
  void more_than_the_whole_and_nothing_at_all_are_refused() {
    assertThatThrownBy(() -> new Proximates(60.0, null, null, 60.0, null, null))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("120 %");
    assertThatThrownBy(() -> new Proximates(null, null, null, null, null, null))
        .isInstanceOf(Refusal.class);
    assertThatThrownBy(() -> new Proximates(90.0, null, null, 2.0, 4.0, null))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("fibre");
  }

  private static Proximates pure(String part) {
    return switch (part) {
      case "water" -> Proximates.ofWater();
      case "protein" -> new Proximates(null, 100.0, null, null, null, null);
      case "fat" -> new Proximates(null, null, 100.0, null, null, null);
      case "carbohydrate" -> new Proximates(null, null, null, 100.0, null, null);
      default -> new Proximates(null, null, null, null, null, 100.0);
    };
  }
}
