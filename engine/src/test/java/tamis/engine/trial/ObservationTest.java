package tamis.engine.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDateTime;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Refusal;

class ObservationTest {

  @ParameterizedTest
  @CsvSource({
    "temperature, 117 g",
    "Temperature, hot",
    "mass, 117 °C",
    "duration, 4",
    "ph, sour",
    "brix, 65 g",
    "specific gravity, 0.4 °C",
    "volume_increase, much"
  })
  void a_value_is_a_reading_of_what_was_measured(String measure, String value) {
    assertThatThrownBy(observed(measure, value)::checkReading)
        .isInstanceOfSatisfying(
            Refusal.class,
            refusal ->
                assertThat(refusal.faults())
                    .allSatisfy(fault -> assertThat(fault.pointer()).isEqualTo("/value")));
  }

  @ParameterizedTest
  @CsvSource({
    "temperature, 242 °F",
    "mass, 1 lb",
    "duration, 4 min",
    "ph, pH 4.2",
    "brix, 65 °Bx",
    "specific-gravity, 0.42",
    "volume-increase, 120 %",
    "humidity, 80 g/m³",
    "temperature,",
    ", 7"
  })
  void measures_of_a_shop_are_taken_as_they_are(String measure, String value) {
    assertThatCode(observed(measure, value)::checkReading).doesNotThrowAnyException();
  }

  private static Observation observed(String measure, String value) {
    var at = LocalDateTime.parse("2026-04-11T08:10");
    return new Observation("o1", null, at, measure, value, null, null, null, null, null);
  }
}
