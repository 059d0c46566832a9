package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {
  @ParameterizedTest
  @CsvSource({
    "temperature, 116 °C, temperature, 116, °C",
    "Temperature, 212 °F, temperature, 100, °C",
    "core temperature, -18 °C, core-temperature, -18, °C",
    ", 22.5 °C, temperature, 22.5, °C",
    "brix, 65 °Bx, brix, 65, °Bx",
    "brix, 65, brix, 65, °Bx",
    "specific_gravity, 0.85, specific-gravity, 0.85, ''",
    "ph, pH 4.2, ph, 4.2, ''",
    "volume-increase, 100 %, volume-increase, 100, %",
    "mass, 1.2 kg, mass, 1200, g",
    "height, 45 mm, height, 4.5, cm",
    "wait, 90 s, wait, 1.5, min"
  })
  void readings_become_a_number_in_one_unit(
      String measure, String text, String named, double value, String unit) {
    Reading reading = Reading.of(measure, text);
    assertThat(reading.measure()).isEqualTo(named);
    assertThat(reading.value()).isEqualTo(value, within(1e-9));
    assertThat(reading.unit()).isEqualTo(unit);
  }

  @ParameterizedTest
  @ValueSource(strings = {"warm", "NaN", "Infinity °C", "∞", "12 parsecs", "9999999999999999", ""})
  void what_is_no_number_is_no_reading(String text) {
    assertThat(Reading.of("temperature", text)).isNull();
    assertThat(text.isEmpty() ? null : Reading.of("ph", text)).isNull();
  }

  @Test
  void figures_in_sentences_are_short() {
    assertThat(Words.number(0.8534)).isEqualTo("0.853");
    assertThat(Words.number(453.592)).isEqualTo("453.6");
    assertThat(Words.number(-0.0)).isEqualTo("0");
    assertThat(Words.percent(0.0004)).isEqualTo("under 0.1 %");
    assertThat(Words.percent(0.05)).isEqualTo("5.0 %");
    assertThat(Words.many(1, "look")).isEqualTo("1 look");
  }
}
