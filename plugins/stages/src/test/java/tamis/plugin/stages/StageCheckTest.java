package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.stages.Checked.SOFT_BALL;
import static tamis.plugin.stages.Checked.at;
import static tamis.plugin.stages.Checked.checked;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class StageCheckTest extends CalculationContract<StageCheck.Input, StageCheck.Result> {
  @Override
  protected Calculation<StageCheck.Input, StageCheck.Result> calculation() {
    return new StageCheck();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "111.9 °C, BELOW",
    "112 °C, WITHIN",
    "238 °F, WITHIN",
    "230 °F, BELOW",
    "116 °C, WITHIN",
    "116.1 °C, ABOVE"
  })
  void a_reading_lies_below_within_or_above(String reading, StageCheck.Verdict verdict) {
    assertThat(checked(SOFT_BALL, at(0, reading)).verdict()).isEqualTo(verdict);
  }

  @Test
  void the_window_of_a_syrup_moves_with_altitude_and_others_stay() {
    StageCheck.Result high =
        result(
            Map.of(
                "target", SOFT_BALL, "readings", List.of(at(0, "108 °C")), "altitude", "1500 m"));
    assertThat(high.verdict()).isEqualTo(StageCheck.Verdict.WITHIN);
    assertThat(high.window().corrected()).isTrue();
    assertThat(high.window().low()).isBetween(106.0, 107.5);
    assertThat(high.window().writtenLow()).isEqualTo(112);
    StageCheck.Result dough =
        result(
            Map.of(
                "target",
                Map.of("kind", "dough", "low", "24 °C", "high", "26 °C"),
                "readings",
                List.of(at(0, "25 °C")),
                "altitude",
                "1500 m"));
    assertThat(dough.window().corrected()).isFalse();
  }

  @Test
  void the_window_falls_steadily_with_altitude() {
    double before = 1000;
    for (int metres = 0; metres <= 4000; metres += 250) {
      double low =
          result(
                  Map.of(
                      "target",
                      SOFT_BALL,
                      "readings",
                      List.of(at(0, "105 °C")),
                      "altitude",
                      metres + " m"))
              .window()
              .low();
      assertThat(low).isLessThan(before);
      before = low;
    }
  }

  @Test
  void a_syrup_cooked_too_far_takes_water() {
    assertThat(checked(SOFT_BALL, at(0, "122 °C")).advice())
        .anyMatch(line -> line.contains("g of hot water for 100 g of sugar"));
  }

  @Test
  void a_cold_cream_is_brought_back_by_a_warmed_portion() {
    StageCheck.Result result =
        result(
            Map.of(
                "target",
                Map.of("kind", "cream", "low", "21 °C", "high", "23 °C"),
                "readings",
                List.of(at(0, "18 °C")),
                "symptom",
                "curdled",
                "batch",
                Map.of(
                    "mass",
                    "1.2 kg",
                    "composition",
                    Map.of("water", 38, "protein", 4, "fat", 36, "carbohydrate", 22),
                    "fat",
                    "milk"),
                "power",
                "800 W"));
    assertThat(result.recovery().toCelsius()).isEqualTo(22);
    assertThat(result.recovery().kilojoules()).isBetween(12.0, 30.0);
    assertThat(result.recovery().portion()).isBetween(0.235, 0.35);
    assertThat(result.recovery().minutes()).isPositive();
    assertThat(result.candidates().get(0).supported()).isTrue();
    assertThat(result.candidates().get(0).cause()).contains("too cold");
    assertThat(result.candidates().get(0).support()).contains("3.00 °C below");
    assertThat(result.advice().get(0)).contains("35 °C");
  }

  @Test
  void a_warm_cream_goes_into_the_ice_bath() {
    StageCheck.Result result =
        result(
            Map.of(
                "target",
                Map.of("kind", "cream", "low", "21 °C", "high", "24 °C"),
                "readings",
                List.of(at(0, "27 °C")),
                "symptom",
                "soupy",
                "batch",
                Map.of("mass", "1 kg", "ingredient", "butter-unsalted")));
    assertThat(result.recovery().kilojoules()).isNegative();
    assertThat(result.recovery().iceBathMinutes()).isPositive();
    assertThat(result.candidates().get(0).cause()).contains("too warm");
  }

  @Test
  void a_formula_tells_its_stage_and_what_is_in_the_bowl() {
    Map<String, Object> formula =
        Map.of(
            "lines",
            List.of(
                Map.of("ingredient", "egg-white", "quantity", "150 g", "stage", "foam"),
                Map.of("ingredient", "butter-unsalted", "quantity", "450 g", "stage", "beat"),
                Map.of("ingredient", "cocoa-powder", "quantity", "60 g", "stage", "flavour")),
            "stages",
            List.of(
                Map.of("id", "foam"),
                Map.of(
                    "id",
                    "beat",
                    "after",
                    List.of("foam"),
                    "target",
                    Map.of("measure", "temperature", "low", "21 °C", "high", "24 °C")),
                Map.of("id", "flavour", "after", List.of("beat"))));
    StageCheck.Result result =
        result(Map.of("formula", formula, "stage", "beat", "readings", List.of(at(0, "19 °C"))));
    assertThat(result.verdict()).isEqualTo(StageCheck.Verdict.BELOW);
    double whole = result.recovery().kilojoules();
    double heat = 0.6 * 3.5 * 2.4;
    assertThat(whole).isGreaterThan(heat * 0.9).isLessThan(heat * 4);
    assertThat(result.cautions()).isNotEmpty();
    Refusals.refused(
        () ->
            result(
                Map.of("formula", formula, "stage", "beet", "readings", List.of(at(0, "19 °C")))),
        FaultCode.UNKNOWN_STAGE,
        "/stage");
    Refusals.refused(
        () ->
            result(
                Map.of("formula", formula, "stage", "foam", "readings", List.of(at(0, "19 °C")))),
        FaultCode.MISSING,
        "/stage");
  }

  @ParameterizedTest(name = "{0} {3} in {1} to {2}: {4}")
  @CsvSource({
    "brix, 65 °Bx, 68 °Bx, 60 °Bx, BELOW",
    "brix, 65 °Bx, 68 °Bx, 66, WITHIN",
    "ph, 3.2, 3.5, pH 3.8, ABOVE",
    "mass, 800 g, 820 g, 900 g, ABOVE",
    "specific-gravity, 0.80, 0.90, 0.85, WITHIN",
    "volume-increase, 80 %, 120 %, 50 %, BELOW"
  })
  void other_measures_work_the_same_way(
      String measure, String low, String high, String value, StageCheck.Verdict verdict) {
    StageCheck.Result result =
        checked(
            Map.of("measure", measure, "low", low, "high", high),
            Map.of("minute", 0, "value", value));
    assertThat(result.verdict()).isEqualTo(verdict);
    assertThat(result.advice()).isNotEmpty();
  }

  @ParameterizedTest(name = "{0} over {1}: {2}")
  @CsvSource({"80 g, 100 g, 0.80", "14 oz, 16 oz, 0.875"})
  void specific_gravity_is_weighed_in_a_cup(String full, String water, double gravity) {
    StageCheck.Result result =
        checked(
            Map.of("measure", "specific-gravity", "low", "0.80", "high", "0.90"),
            Map.of("full", full, "water", water));
    assertThat(result.reading()).isCloseTo(gravity, within(1e-12));
  }

  @Test
  void air_is_told_against_the_mix_before_beating() {
    StageCheck.Result result =
        checked(
            Map.of("measure", "specific-gravity", "low", "0.50", "high", "0.60"),
            Map.of("full", "600 g", "water", "1050 g", "tare", "50 g", "plain", "1050 g"));
    assertThat(result.reading()).isCloseTo(0.55, within(1e-12));
    assertThat(result.aerationPercent()).isCloseTo(81.8, within(0.05)); // 1000 to 550 g a litre
  }

  @Test
  void a_kind_alone_has_a_usual_window_by_use() {
    assertThat(checked(Map.of("kind", "butter"), at(0, "19 °C")).verdict())
        .isEqualTo(StageCheck.Verdict.WITHIN);
    StageCheck.Result lamination =
        result(
            Map.of(
                "target",
                Map.of("kind", "butter"),
                "use",
                "lamination",
                "readings",
                List.of(at(0, "19 °C"))));
    assertThat(lamination.deviation()).isCloseTo(4, within(1e-9));
  }

  @Test
  void an_ingredient_has_its_own_windows() {
    StageCheck.Result result =
        result(
            Map.of(
                "ingredient",
                "butter-unsalted",
                "window",
                "plastic",
                "readings",
                List.of(at(0, "14 °C"))));
    assertThat(result.verdict()).isEqualTo(StageCheck.Verdict.BELOW);
    assertThat(result.window().low()).isEqualTo(18);
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "ingredient",
                    "butter-unsalted",
                    "window",
                    "elastic",
                    "readings",
                    List.of(at(0, "14 °C")))),
        FaultCode.NO_SUCH_VALUE,
        "/window");
  }

  @Test
  void a_thermometer_that_is_off_moves_the_window() {
    StageCheck.Result result =
        result(
            Map.of(
                "target",
                Map.of("low", "82 °C", "high", "84 °C"),
                "readings",
                List.of(at(0, "85 °C")),
                "altitude",
                "0 m",
                "boilingWater",
                "101.97 °C"));
    assertThat(result.window().low()).isCloseTo(84, within(0.01));
    assertThat(result.verdict()).isEqualTo(StageCheck.Verdict.WITHIN);
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    Refusals.refused(
        () -> checked(SOFT_BALL, at(3, "104 °C"), at(2, "105 °C")),
        FaultCode.INCONSISTENT,
        "/readings/1/minute");
    Refusals.refused(
        () -> checked(SOFT_BALL, at(3, "104 °C"), at(4, "225 °F")),
        FaultCode.INCONSISTENT,
        "/readings/1/temperature");
    Refusals.refused(
        () -> checked(SOFT_BALL, at(3, "900 °C")),
        FaultCode.OUT_OF_BOUNDS,
        "/readings/0/temperature");
    Refusals.refused(
        () ->
            checked(
                Map.of("kind", "cooling", "low", "14 °C", "high", "16 °C", "surroundings", "20 °C"),
                at(0, "40 °C")),
        FaultCode.IMPOSSIBLE,
        "/target/surroundings");
    Refusals.refused(
        () -> checked(Map.of("low", "20 °C", "high", "16 °C"), at(0, "40 °C")),
        FaultCode.INCONSISTENT,
        "/target/low");
    Refusals.refused(
        () -> checked(Map.of("low", "20", "high", "26 °C"), at(0, "40 °C")),
        FaultCode.NO_UNIT,
        "/target/low");
    Refusals.refused(
        () -> checked(Map.of("measure", "brix", "low", "65", "high", "68"), at(0, "40 °C")),
        FaultCode.WRONG_DIMENSION,
        "/readings/0/temperature");
    Refusals.refused(
        () -> result(Map.of("target", SOFT_BALL, "readings", List.of())),
        FaultCode.MISSING,
        "/readings");
  }
}
