package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class WarmingTest extends CalculationContract<Warming.Input, Warming.Result> {
  private static final Map<String, Object> CREAM =
      Map.of("water", 38, "protein", 4, "fat", 36, "carbohydrate", 22);

  @Override
  protected Calculation<Warming.Input, Warming.Result> calculation() {
    return new Warming();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  private Warming.Result warmed(Object fat) {
    return result(
        fat.equals("")
            ? Map.of(
                "mass",
                "1.2 kg",
                "composition",
                CREAM,
                "from",
                "18 °C",
                "to",
                "22 °C",
                "portionAt",
                "35 °C",
                "power",
                "800 W")
            : Map.of(
                "mass",
                "1.2 kg",
                "composition",
                CREAM,
                "from",
                "18 °C",
                "to",
                "22 °C",
                "portionAt",
                "35 °C",
                "power",
                "800 W",
                "fat",
                fat));
  }

  @Test
  void the_portion_is_that_of_equal_heat_capacities_where_nothing_melts() {
    assertThat(warmed("").portionToMelt()).isCloseTo(0.235, within(0.003)); // (22−18)/(35−18)
  }

  @Test
  void melting_fat_makes_the_real_need_larger() {
    assertThat(warmed("milk").kilojoules()).isGreaterThan(1.2 * warmed("").kilojoules());
    assertThat(warmed("milk").portionToMelt()).isGreaterThan(warmed("").portionToMelt());
    assertThat(warmed("milk").kilojoulesLow()).isLessThan(warmed("milk").kilojoules());
    assertThat(warmed("milk").kilojoulesHigh()).isGreaterThan(warmed("milk").kilojoules());
  }

  @Test
  void a_kilogram_of_water_takes_its_known_heat() {
    Warming.Result result =
        result(
            Map.of(
                "mass",
                "1 kg",
                "ingredient",
                "water",
                "from",
                "20 °C",
                "to",
                "30 °C",
                "power",
                "500 W",
                "efficiency",
                "80 %"));
    assertThat(result.kilojoules()).isCloseTo(41.8, within(0.1));
    assertThat(result.minutes()).isCloseTo(41.8 / 0.4 / 60, within(0.01));
    assertThat(result.minutesLow()).isEqualTo(result.minutesHigh());
  }

  @Test
  void a_kilogram_of_ice_takes_the_heat_of_fusion_too() {
    double heat =
        result(Map.of("mass", "1 kg", "ingredient", "ice", "from", "-10 °C", "to", "10 °C"))
            .kilojoules();
    assertThat(heat).isCloseTo(20.6 + 333.6 + 41.8, within(2.5)); // worked by hand
  }

  @Test
  void there_and_back_is_nothing() {
    double there =
        result(
                Map.of(
                    "mass",
                    "500 g",
                    "ingredient",
                    "butter-unsalted",
                    "from",
                    "12 °C",
                    "to",
                    "26 °C"))
            .kilojoules();
    double back =
        result(
                Map.of(
                    "mass",
                    "500 g",
                    "ingredient",
                    "butter-unsalted",
                    "from",
                    "26 °C",
                    "to",
                    "12 °C"))
            .kilojoules();
    assertThat(there + back).isCloseTo(0, within(1e-9));
  }

  @Test
  void more_mass_and_a_further_way_take_more_heat() {
    double before = 0;
    for (int celsius = 19; celsius < 45; celsius++) {
      double heat =
          result(
                  Map.of(
                      "mass",
                      "1 kg",
                      "composition",
                      CREAM,
                      "fat",
                      "milk",
                      "from",
                      "18 °C",
                      "to",
                      celsius + " °C"))
              .kilojoules();
      assertThat(heat).isGreaterThan(before);
      before = heat;
    }
  }

  @Test
  void too_warm_goes_into_the_ice_bath() {
    Warming.Result result =
        result(
            Map.of(
                "mass",
                "1.2 kg",
                "composition",
                CREAM,
                "fat",
                "milk",
                "from",
                "27 °C",
                "to",
                "23 °C"));
    assertThat(result.kilojoules()).isNegative();
    assertThat(result.iceBathMinutes()).isBetween(0.3, 5.0);
    assertThat(result.iceGrams()).isCloseTo(-result.kilojoules() / 0.3336, within(1e-6));
    assertThat(result.minutes()).isNull();
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "mass",
                    "1 kg",
                    "composition",
                    CREAM,
                    "from",
                    "18 °C",
                    "to",
                    "22 °C",
                    "portionAt",
                    "21 °C")),
        FaultCode.IMPOSSIBLE,
        "/portionAt");
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "mass",
                    "1 kg",
                    "composition",
                    CREAM,
                    "from",
                    "18 °C",
                    "to",
                    "22 °C",
                    "efficiency",
                    0.5)),
        FaultCode.MISSING,
        "/power");
    Refusals.refused(
        () -> result(Map.of("mass", "1 kg", "from", "18 °C", "to", "22 °C")),
        FaultCode.EXACTLY_ONE,
        "");
    Refusals.refused(
        () -> result(Map.of("mass", "1 kg", "composition", CREAM, "from", "18", "to", "22 °C")),
        FaultCode.NO_UNIT,
        "/from");
  }
}
