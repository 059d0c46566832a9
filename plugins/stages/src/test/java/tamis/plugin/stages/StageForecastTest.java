package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.stages.Checked.SOFT_BALL;
import static tamis.plugin.stages.Checked.answer;
import static tamis.plugin.stages.Checked.at;
import static tamis.plugin.stages.Checked.checked;
import static tamis.plugin.stages.Checked.result;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;

/** When a stage will be in its window, by what its readings say. */
class StageForecastTest {
  @Test
  void newton_cooling_foretells_the_worked_example() {
    // 95 °C to 30 °C in air of 20 °C with k = 0.05 a minute takes ln(75/10)/0.05 = 40.3 min.
    List<Map<String, Object>> readings = new ArrayList<>();
    double before = Double.POSITIVE_INFINITY;
    for (int minute = 0; minute <= 20; minute += 5) {
      readings.add(at(minute, 20 + 75 * Math.exp(-0.05 * minute) + " °C"));
      if (minute > 0) {
        Forecast forecast =
            result(
                    Map.of(
                        "target",
                        Map.of(
                            "kind",
                            "cooling",
                            "low",
                            "28 °C",
                            "high",
                            "30 °C",
                            "surroundings",
                            "20 °C"),
                        "readings",
                        List.copyOf(readings)))
                .forecast();
        assertThat(forecast.minute()).isCloseTo(40.30, within(0.01));
        assertThat(forecast.high() - forecast.low()).isLessThan(before);
        before = forecast.high() - forecast.low();
      }
    }
  }

  @Test
  void the_surroundings_are_found_from_enough_readings() {
    List<Map<String, Object>> readings = new ArrayList<>();
    for (int minute = 0; minute <= 40; minute += 8) {
      readings.add(at(minute, 20 + 75 * Math.exp(-0.05 * minute) + " °C"));
    }
    Forecast forecast =
        result(
                Map.of(
                    "target",
                    Map.of("kind", "cooling", "low", "24 °C", "high", "27 °C"),
                    "readings",
                    readings))
            .forecast();
    assertThat(forecast.minute()).isCloseTo(Math.log(75.0 / 7) / 0.05, within(0.1));
  }

  @Test
  void readings_that_do_not_fit_are_said() {
    assertThat(
            answer(
                    Map.of(
                        "target",
                        Map.of(
                            "kind",
                            "cooling",
                            "low",
                            "28 °C",
                            "high",
                            "30 °C",
                            "surroundings",
                            "20 °C"),
                        "readings",
                        List.of(
                            at(0, "95 °C"),
                            at(5, "60 °C"),
                            at(10, "82 °C"),
                            at(15, "50 °C"),
                            at(20, "58 °C"))))
                .remarks())
        .extracting(Remark::code)
        .contains("readings-do-not-fit");
  }

  @Test
  void one_reading_tells_no_forecast() {
    StageCheck.Result result = checked(Map.of("low", "28 °C", "high", "30 °C"), at(0, "40 °C"));
    assertThat(result.forecast()).isNull();
    assertThat(result.verdict()).isEqualTo(StageCheck.Verdict.ABOVE);
  }

  @Test
  void a_boiling_syrup_is_foretold() {
    StageCheck.Result result = checked(SOFT_BALL, at(0, "106 °C"), at(3, "108 °C"));
    assertThat(result.forecast().minute()).isGreaterThan(3);
    assertThat(result.forecast().low()).isLessThan(result.forecast().high());
    assertThat(result.cautions()).isNotEmpty();
  }

  @Test
  void a_mass_cooked_down_is_foretold_along_its_line() {
    StageCheck.Result result =
        checked(
            Map.of("measure", "mass", "low", "780 g", "high", "800 g"),
            Map.of("minute", 0, "value", "1000 g"),
            Map.of("minute", 5, "value", "950 g"),
            Map.of("minute", 10, "value", "900 g"));
    assertThat(result.forecast().minute()).isCloseTo(20, within(1e-6));
  }
}
