package tamis.plugin.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;
import tamis.plugin.dough.DoughTemperature.Input;
import tamis.plugin.dough.DoughTemperature.Result;

class DoughTemperatureTest extends CalculationContract<Input, Result> {
  @Override
  protected Calculation<Input, Result> calculation() {
    return new DoughTemperature();
  }

  @Override
  protected Plugin plugin() {
    return new DoughPlugin();
  }

  @ParameterizedTest(name = "{0}: water at {9} °C, {10} g of ice ({12})")
  @CsvFileSource(resources = "/dough-temperature.csv", numLinesToSkip = 1)
  void water_and_ice_match_the_worked_examples(
      String example,
      String desired,
      String flour,
      String room,
      String preferment,
      String friction,
      String water,
      String tap,
      String ice,
      double waterCelsius,
      Double iceGrams,
      double tolerance,
      String source) {
    Map<String, Object> input = input(desired, flour, room, friction, water);
    put(input, "prefermentTemperature", preferment);
    put(input, "tapTemperature", tap);
    put(input, "iceTemperature", ice);

    Result result = result(input);

    assertThat(result.waterCelsius()).as(source).isCloseTo(waterCelsius, within(1e-4));
    assertThat(result.temperaturesCounted()).isEqualTo(preferment == null ? 3 : 4);
    if (iceGrams == null) {
      assertThat(result.iceGrams()).isNull();
      assertThat(result.waterGrams()).isNull();
    } else {
      assertThat(result.iceGrams()).as(source).isCloseTo(iceGrams, within(tolerance));
      double all = read(input).waterMass().grams();
      assertThat(result.iceGrams() + result.waterGrams()).isCloseTo(all, within(1e-6));
    }
  }

  /** A public article prints 4.4 kg: it takes the ice as added, and keeps the water at 40 kg. */
  @Test
  void ice_replaces_water_and_the_articles_figure_is_not_repeated() {
    Map<String, Object> input = input("24 °C", "26 °C", "24 °C", "12 °C", "40 kg");
    input.put("tapTemperature", "20 °C");

    assertThat(result(input).iceGrams()).isNotCloseTo(4_400, within(300.0));
    assertThat(result(input).waterGrams()).isCloseTo(35_987.7, within(0.1));
  }

  /** The divisor printed on a forum, 454.064, is a slip; it gives 1383 g. */
  @Test
  void the_slip_of_the_forum_is_not_repeated() {
    Map<String, Object> input = input("24 °C", "22 °C", "20 °C", "10 °C", "31.37826 kg");
    input.put("tapTemperature", "25 °C");
    input.put("iceTemperature", "-18 °C");

    assertThat(result(input).iceGrams()).isNotCloseTo(1_383.17, within(3.0));
  }

  @Test
  void the_textbooks_eighty_is_told_beside_the_balance() {
    Map<String, Object> input = input("24 °C", "26 °C", "24 °C", "12 °C", "40 kg");
    input.put("tapTemperature", "20 °C");

    assertThat(remark(input, "ice-melting")).contains("80").contains("4 kg");
  }

  @Test
  void water_warmer_than_the_tap_takes_no_ice_and_says_how_much_to_warm() {
    Map<String, Object> input = input("24 °C", "19 °C", "21 °C", "12 °C", "10 kg");
    input.put("tapTemperature", "8 °C");

    Result result = result(input);

    assertThat(result.iceGrams()).isZero();
    assertThat(result.waterGrams()).isEqualTo(10_000);
    assertThat(remark(input, "warm-the-water")).contains("12 °C (21.6 °F)").contains("20 °C");
  }

  @Test
  void a_friction_found_with_three_temperatures_is_doubted_with_four() {
    Map<String, Object> input = input("25 °C", "19 °C", "22 °C", "12 °C", "4 kg");
    assertThat(codes(input)).doesNotContain("friction-of-four");

    input.put("prefermentTemperature", "20 °C");
    assertThat(remark(input, "friction-of-four")).contains("three");
  }

  @Test
  void a_friction_that_looks_like_a_reading_is_doubted() {
    assertThat(codes(input("24 °C", "19 °C", "10 °C", "26 °C", "4 kg")))
        .contains("friction-unusual");
    assertThat(codes(input("24 °C", "19 °C", "10 °C", "25 °C", "4 kg")))
        .doesNotContain("friction-unusual");
  }

  @Test
  void friction_is_a_difference() {
    double celsius = result(input("24 °C", "19 °C", "21 °C", "12 °C", "4 kg")).waterCelsius();
    double fahrenheit = result(input("24 °C", "19 °C", "21 °C", "21.6 °F", "4 kg")).waterCelsius();

    assertThat(fahrenheit).isCloseTo(celsius, within(1e-9));
  }

  @Test
  void the_temperature_is_shown_as_a_thermometer_is_read() {
    Map<String, Object> input = input("75 °F", "65 °F", "65 °F", "8 °F", "10 lb");
    assertThat(result(input).display()).isEqualTo("31 °C");

    input.put("units", "us");
    assertThat(result(input).display()).isEqualTo("87 °F");
  }

  @Test
  void hot_water_is_cautioned() {
    Map<String, Object> input = input("30 °C", "10 °C", "15 °C", "12 °C", "4 kg");
    assertThat(result(input).waterCelsius()).isCloseTo(53, within(1e-9));

    assertThat(answer(read(input)).remarks())
        .filteredOn(remark -> remark.code().equals("hot-water"))
        .singleElement()
        .extracting(Remark::kind)
        .isEqualTo(Remark.Kind.CAUTION);
    assertThat(codes(input("29 °C", "10 °C", "15 °C", "12 °C", "4 kg")))
        .doesNotContain("hot-water");
  }

  @Test
  void ice_that_has_to_melt_in_the_dough_is_an_estimate() {
    Map<String, Object> input = input("24 °C", "30 °C", "32 °C", "14 °C", "10 kg");
    input.put("tapTemperature", "19 °C");

    assertThat(remark(input, "ice-melts-in-dough")).contains("-4 °C");
  }

  @Test
  void water_below_freezing_is_refused_unless_the_tap_is_known() {
    Fault fault = refused(input("24 °C", "30 °C", "32 °C", "14 °C", "10 kg"));

    assertThat(fault.code()).isEqualTo(FaultCode.IMPOSSIBLE);
    assertThat(fault.pointer()).isEqualTo("/desired");
    assertThat(fault.message()).contains("-4 °C").contains("tapTemperature");
  }

  @Test
  void more_ice_than_water_is_refused() {
    Map<String, Object> input = input("5 °C", "40 °C", "40 °C", "20 °C", "10 kg");
    input.put("tapTemperature", "20 °C");

    Fault fault = refused(input);

    assertThat(fault.code()).isEqualTo(FaultCode.IMPOSSIBLE);
    assertThat(fault.message()).contains("10 kg").contains("cool the flour");
  }

  @Test
  void water_above_boiling_is_refused() {
    Fault fault = refused(input("50 °C", "10 °C", "15 °C", "12 °C", "10 kg"));

    assertThat(fault.code()).isEqualTo(FaultCode.IMPOSSIBLE);
    assertThat(fault.message()).contains("113 °C").contains("boiling");
  }

  @Test
  void ice_without_a_tap_is_refused() {
    Map<String, Object> input = input("24 °C", "19 °C", "21 °C", "12 °C", "10 kg");
    input.put("iceTemperature", "-18 °C");

    Fault fault = refused(input);

    assertThat(fault.code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(fault.pointer()).isEqualTo("/iceTemperature");
  }

  @Test
  void temperatures_that_no_bakery_has_are_all_refused_at_once() {
    Map<String, Object> input = input("240 °C", "190 °C", "21 °C", "12 °C", "0 g");

    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));

    assertThat(refusal.faults())
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/desired", "/flourTemperature", "/waterMass");
  }

  /** What the ice takes up is what the tap's share gives off. */
  @Test
  void the_heat_is_balanced() {
    Random random = new Random(20260506);
    int withIce = 0;
    for (int i = 0; i < 200; i++) {
      double tap = 30 * random.nextDouble();
      double ice = -25 * random.nextDouble();
      double flour = 15 + 15 * random.nextDouble();
      Map<String, Object> input =
          input("24 °C", flour + " °C", "28 °C", "12 °C", 1 + 50 * random.nextDouble() + " kg");
      input.put("tapTemperature", tap + " °C");
      input.put("iceTemperature", ice + " °C");

      Result result = result(input);

      double water = result.waterCelsius();
      if (water < tap) {
        double taken = result.iceGrams() * (-2.108 * ice + 333.6 + 4.186 * water);
        double given = result.waterGrams() * 4.186 * (tap - water);
        assertThat(taken).isCloseTo(given, within(1e-6 * given));
        withIce++;
      }
    }
    assertThat(withIce).isGreaterThan(50);
  }

  /** The friction that a dough tells leads back to the water that it was made with. */
  @Test
  void friction_factor_and_water_temperature_undo_each_other() {
    Random random = new Random(20260507);
    for (int i = 0; i < 100; i++) {
      Map<String, Object> readings = new LinkedHashMap<>();
      readings.put("flourTemperature", 10 + 20 * random.nextDouble() + " °C");
      readings.put("roomTemperature", 15 + 15 * random.nextDouble() + " °C");
      if (random.nextBoolean()) {
        readings.put("prefermentTemperature", 15 + 15 * random.nextDouble() + " °C");
      }
      double water = 5 + 30 * random.nextDouble();
      Map<String, Object> made = new LinkedHashMap<>(readings);
      made.put("waterTemperature", water + " °C");
      made.put("measured", "26 °C");
      FrictionFactor.Result friction =
          (FrictionFactor.Result) kitchen().calculate("friction-factor", made).result();
      readings.put("desired", "26 °C");
      readings.put("friction", friction.frictionKelvins() + " K");
      readings.put("waterMass", "10 kg");

      assertThat(result(readings).waterCelsius()).isCloseTo(water, within(1e-6));
    }
  }

  private static Map<String, Object> input(
      String desired, String flour, String room, String friction, String water) {
    Map<String, Object> input = new LinkedHashMap<>();
    input.put("desired", desired);
    input.put("flourTemperature", flour);
    input.put("roomTemperature", room);
    input.put("friction", friction);
    input.put("waterMass", water);
    return input;
  }

  private static void put(Map<String, Object> input, String name, String value) {
    if (value != null) {
      input.put(name, value);
    }
  }

  private List<String> codes(Map<String, ?> input) {
    return answer(read(input)).remarks().stream().map(Remark::code).toList();
  }

  private String remark(Map<String, ?> input, String code) {
    return answer(read(input)).remarks().stream()
        .filter(remark -> remark.code().equals(code))
        .map(Remark::message)
        .findFirst()
        .orElseThrow();
  }

  private Fault refused(Map<String, ?> input) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal.faults()).hasSize(1);
    return refusal.faults().get(0);
  }
}
