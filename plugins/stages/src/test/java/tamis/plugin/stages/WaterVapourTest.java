package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.hummeling.if97.IF97;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class WaterVapourTest {
  private static final double METRES_PER_FOOT = 0.3048;

  @ParameterizedTest(name = "psat({0} K) is {1} MPa")
  @CsvSource({"300, 0.00353658941", "500, 2.63889776", "600, 12.3443146"})
  void pressures_are_those_of_the_verification_table(double kelvin, double megapascals) {
    assertThat(WaterVapour.pressure(kelvin - 273.15) / 1e6)
        .isCloseTo(megapascals, within(megapascals * 5e-9));
  }

  @ParameterizedTest(name = "Tsat({0} MPa) is {1} K")
  @CsvSource({"0.1, 372.755919", "1, 453.035632", "10, 584.149488"})
  void boiling_points_are_those_of_the_verification_table(double megapascals, double kelvin) {
    assertThat(WaterVapour.boilingPoint(megapascals * 1e6) + 273.15)
        .isCloseTo(kelvin, within(5e-7));
  }

  @Test
  void water_boils_a_little_below_100_degrees_at_sea_level() {
    assertThat(WaterVapour.boilingPoint(101_325)).isCloseTo(99.9743, within(1e-4));
  }

  @ParameterizedTest(name = "{0} ft: {2} °C")
  @CsvFileSource(resources = "boiling-by-altitude.csv", numLinesToSkip = 1)
  void altitude_lowers_the_boiling_point_as_published(
      double feet, double pascals, double celsius, Double published, String source) {
    double pressure = WaterVapour.atmosphere(feet * METRES_PER_FOOT);
    assertThat(pressure).isCloseTo(pascals, within(0.06));
    double boils = WaterVapour.boilingPoint(pressure);
    assertThat(boils).isCloseTo(celsius, within(6e-4));
    if (published != null) {
      assertThat(boils * 9 / 5 + 32).isCloseTo(published, within(0.4));
    }
  }

  @Test
  void an_independent_library_agrees_over_the_whole_range() {
    IF97 steam = new IF97(IF97.UnitSystem.DEFAULT);
    for (int celsius = 40; celsius <= 260; celsius += 5) {
      assertThat(WaterVapour.pressure(celsius))
          .as("psat(%s °C)", celsius)
          .isCloseTo(
              steam.saturationPressureT(celsius + 273.15) * 1e6,
              within(1e-7 * WaterVapour.pressure(celsius)));
      double megapascals = WaterVapour.pressure(celsius) / 1e6;
      assertThat(WaterVapour.boilingPoint(megapascals * 1e6))
          .isCloseTo(steam.saturationTemperatureP(megapascals) - 273.15, within(1e-6));
    }
  }

  @Test
  void boiling_point_and_pressure_undo_each_other() {
    for (double celsius = 30; celsius < 250; celsius += 7.3) {
      assertThat(WaterVapour.boilingPoint(WaterVapour.pressure(celsius)))
          .isCloseTo(celsius, within(1e-7));
    }
  }
}
