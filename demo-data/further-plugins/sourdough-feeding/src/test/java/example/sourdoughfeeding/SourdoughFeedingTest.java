package example.sourdoughfeeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class SourdoughFeedingTest
    extends CalculationContract<SourdoughFeeding.Input, SourdoughFeeding.Result> {
  @Override
  protected Calculation<SourdoughFeeding.Input, SourdoughFeeding.Result> calculation() {
    return new SourdoughFeeding();
  }

  @Override
  protected Plugin plugin() {
    return new SourdoughFeedingPlugin();
  }

  @ParameterizedTest(name = "{0} fed {2} at {4} °C ({15})")
  @CsvFileSource(resources = "/sourdough-feeding.csv", numLinesToSkip = 1)
  void the_feeding_matches_the_worked_examples(
      String starter, double hydration, String ratio, String wanted, double celsius, int feedings,
      double use, double flour, double water, double ripe, double discard, double percent,
      double low, double hours, double high, String source) {
    SourdoughFeeding.Result result =
        answer(
                new SourdoughFeeding.Input(
                    Mass.parse(starter),
                    hydration,
                    ratio,
                    wanted == null ? null : Mass.parse(wanted),
                    Temperature.ofCelsius(celsius),
                    feedings))
            .result();
    assertThat(result.starterGrams()).isCloseTo(use, within(1e-9));
    assertThat(result.flourGrams()).isCloseTo(flour, within(1e-9));
    assertThat(result.waterGrams()).isCloseTo(water, within(1e-9));
    assertThat(result.ripeGrams()).isCloseTo(ripe, within(1e-9));
    assertThat(result.discardGrams()).isCloseTo(discard, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(percent, within(1e-6));
    assertThat(result.lowHours()).isCloseTo(low, within(1e-9));
    assertThat(result.hours()).isCloseTo(hours, within(1e-9));
    assertThat(result.highHours()).isCloseTo(high, within(1e-9));
  }

  @Test
  void all_tables_rise_and_low_is_below_high() {
    for (double celsius = 16; celsius <= 32; celsius += 0.5) {
      for (String ratio : new String[] {"4:1:1", "2:1:1", "1:1:1", "1:2:2", "1:5:5", "1:20:20"}) {
        SourdoughFeeding.Result r =
            result(
                Map.of("starter", "100 g", "ratio", ratio, "temperature", celsius + " °C"));
        assertThat(r.hours()).isGreaterThan(r.lowHours()).isLessThan(r.highHours());
      }
    }
  }

  @Test
  void raw_flour_is_cautioned_of_and_the_last_spoon_is_told() {
    assertThat(answer(calculation().examples().get(0)).remarks())
        .extracting(Remark::code)
        .contains("keeping", "hours-estimate", "nothing-left");
  }

  @ParameterizedTest
  @ValueSource(strings = {"1-2-2", "1:2", "0:2:2", "1:0:2", "1:30:30", "1:2:9", "1:2:2:2"})
  void a_feeding_that_cannot_be_is_refused(String ratio) {
    assertThatThrownBy(
            () -> result(Map.of("starter", "100 g", "ratio", ratio, "temperature", "25 °C")))
        .isInstanceOf(Refusal.class);
  }

  @Test
  void too_little_starter_is_refused_and_says_how_many_feedings_do_it() {
    assertThatThrownBy(
            () ->
                result(
                    Map.of(
                        "starter", "20 g", "ratio", "1:2:2", "wanted", "1 kg",
                        "temperature", "25 °C")))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("3 feedings do it");
  }

  @Test
  void neither_ratio_nor_wanted_is_refused() {
    assertThatThrownBy(() -> result(Map.of("starter", "20 g", "temperature", "25 °C")))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("wanted");
  }
}
