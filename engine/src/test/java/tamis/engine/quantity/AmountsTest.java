package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Quantities of one kind: what else is refused, and what callers write for the same amount. */
class AmountsTest {
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "250, no-unit, has no unit",
    "2-3 kg, unreadable-quantity, is a range",
    "2 cup, wrong-dimension, is a volume",
    "2 each, wrong-dimension, is a count",
    "-1 g, out-of-bounds, mass must be 0 to 1000000000 g",
    "1e10 g, out-of-bounds, mass must be 0 to 1000000000 g",
    "2 stones, unknown-unit, is no unit"
  })
  void a_mass_is_one_amount_of_mass(String text, String code, String says) {
    Fault fault = catchThrowableOfType(Refusal.class, () -> Mass.parse(text)).faults().get(0);
    assertThat(fault.code()).hasToString(code);
    assertThat(fault.message()).contains(says);
    assertThat(fault.allowed()).isNotBlank();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "180 °C",
        "180°C",
        "180 C",
        "180c",
        "180 ℃",
        "180 Cel",
        "180 celsius",
        "356 °F",
        "356F",
        "356 [degF]",
        "453.15 K",
        "180\u00a0°C",
        "+180 °C"
      })
  void one_temperature_is_written_in_many_ways(String text) {
    assertThat(Temperature.parse(text)).isEqualTo(Temperature.ofCelsius(180));
  }

  @Test
  void a_temperature_is_not_its_difference() {
    assertThat(Temperature.parse("-40 °F")).isEqualTo(Temperature.ofCelsius(-40));
    assertThat(TemperatureDifference.parse("12 C").kelvins()).isEqualTo(12);
    assertThat(TemperatureDifference.parse("-18 °F").kelvins()).isEqualTo(-10, within(1e-12));
    assertThat(Temperature.parse("20 °C").plus(TemperatureDifference.parse("9 °F")))
        .isEqualTo(Temperature.ofCelsius(25));
    assertThat(Temperature.ofCelsius(24).minus(Temperature.ofCelsius(21)))
        .isEqualTo(TemperatureDifference.ofKelvins(3));
  }

  @Test
  void nothing_is_colder_than_absolute_zero() {
    Fault fault =
        catchThrowableOfType(Refusal.class, () -> Temperature.parse("-274 °C")).faults().get(0);
    assertThat(fault.code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
    assertThat(fault.message()).isEqualTo("temperature must be -273.15 to 2000 °C, was -274 °C");
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({"0.1, 0.1", "10 %, 0.1", "10%, 0.1", "12.5 percent, 0.125", "1/4, 0.25", "half, 0.5"})
  void a_fraction_is_a_number_up_to_one_or_a_percentage(String text, double value) {
    assertThat(Fraction.parse(text).value()).isEqualTo(value);
    assertThat(Fraction.parse(text).rest()).isEqualTo(1 - value);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "10, out-of-bounds",
    "150 %, out-of-bounds",
    "-1 %, out-of-bounds",
    "5-10 %, unreadable-quantity",
    "0.1 g, unreadable-quantity"
  })
  void what_is_no_part_of_a_whole_is_refused(String text, String code) {
    Fault fault = catchThrowableOfType(Refusal.class, () -> Fraction.parse(text)).faults().get(0);
    assertThat(fault.code()).hasToString(code);
  }

  @Test
  void amounts_are_added_taken_away_and_multiplied_in_one_unit() {
    assertThat(Mass.parse("1 kg").plus(Mass.parse("250 g"))).hasToString("1250 g");
    assertThat(Mass.ofKilograms(2).minus(Mass.ofGrams(500)).times(2))
        .isEqualTo(Mass.ofKilograms(3));
    assertThat(Volume.ofLitres(1).plus(Volume.ofMillilitres(5)).minus(Volume.parse("5 ml")))
        .isEqualTo(Volume.parse("1 l").times(1));
    assertThat(catchThrowableOfType(Refusal.class, () -> Mass.zero().minus(Mass.ofGrams(1))))
        .hasMessage("mass must be 0 to 1000000000 g, was -1 g");
    assertThat(Mass.parse("2 lb")).isGreaterThan(Mass.parse("900 g"));
    assertThat(Length.ofCentimetres(23).centimetres()).isEqualTo(23, within(1e-12));
    assertThat(TimeSpan.parse("1.5 h").minutes()).isEqualTo(90);
  }

  @Test
  void a_spread_never_runs_backwards_and_divides_end_by_other_end() {
    Spread cups = new Spread(2, 3, 4);
    assertThat(cups.over(new Spread(1, 2, 4))).isEqualTo(new Spread(0.5, 1.5, 4));
    assertThat(cups.times(2)).isEqualTo(new Spread(4, 6, 8));
    assertThat(cups.plus(Spread.exactly(1))).isEqualTo(new Spread(3, 4, 5));
    assertThat(cups.isExact()).isFalse();
    assertThat(Spread.zero().isExact()).isTrue();
    for (Runnable wrong :
        new Runnable[] {
          () -> new Spread(2, 1, 3),
          () -> new Spread(1, 4, 3),
          () -> new Spread(Double.NaN, 1, 2),
          () -> new Spread(0, 1, Double.POSITIVE_INFINITY)
        }) {
      assertThat(catchThrowableOfType(Refusal.class, wrong::run).faults().get(0).code())
          .isEqualTo(FaultCode.INCONSISTENT);
    }
  }
}
