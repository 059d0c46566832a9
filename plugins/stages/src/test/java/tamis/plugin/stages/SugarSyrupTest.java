package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class SugarSyrupTest extends CalculationContract<SugarSyrup.Input, SugarSyrup.Result> {
  @Override
  protected Calculation<SugarSyrup.Input, SugarSyrup.Result> calculation() {
    return new SugarSyrup();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  @ParameterizedTest(name = "{0}: {1} is {2}{3} ({4})")
  @CsvFileSource(resources = "stages-at-sea-level.csv", numLinesToSkip = 1)
  void a_reading_at_sea_level_is_named_by_each_authority(
      String authority, String temperature, String stage, String between, String source) {
    SugarSyrup.Result result =
        result(Map.of("temperature", temperature, "authority", authority, "altitude", "0 m"));
    assertThat(result.stage() == null ? null : result.stage().toString()).isEqualTo(stage);
    assertThat(result.between())
        .isEqualTo(between == null ? List.of() : Arrays.asList(between.split(" ")));
  }

  @Test
  void soft_ball_at_238_fahrenheit_is_about_85_percent() {
    assertThat(result(Map.of("temperature", "238 °F")).sugarPercent()).isCloseTo(85, within(0.7));
  }

  @ParameterizedTest(name = "{0} at {1} ft: {2} to {3} °F")
  @CsvFileSource(resources = "stages-at-altitude.csv", numLinesToSkip = 1)
  void stages_move_down_with_altitude_as_published(
      String stage,
      double feet,
      double low,
      double high,
      double seaLow,
      double seaHigh,
      String source) {
    Window here = target(stage, feet);
    Window sea = target(stage, 0);
    // The published table falls 2 °F in 1000 ft at every stage; thick syrups fall a little more.
    assertThat((sea.low() - here.low()) * 9 / 5).isCloseTo(seaLow - low, within(2.5));
    assertThat((sea.high() - here.high()) * 9 / 5).isCloseTo(seaHigh - high, within(3.1));
    if (stage.equals("soft-ball")) {
      assertThat(here.low() * 9 / 5 + 32).isCloseTo(low, within(1.0));
      assertThat(here.high() * 9 / 5 + 32).isCloseTo(high, within(1.0));
    }
  }

  private Window target(String stage, double feet) {
    return result(Map.of("stage", stage, "altitude", feet + " ft", "authority", "us-extension"))
        .targetCelsius();
  }

  @Test
  void the_slip_in_the_published_table_is_not_followed() {
    Window soft =
        result(Map.of("stage", "soft-crack", "altitude", "5000 ft", "authority", "us-extension"))
            .targetCelsius();
    assertThat(soft.high() * 9 / 5 + 32).as("printed 286, meant 280").isLessThan(282.5);
  }

  @Test
  void the_rule_of_thumb_is_near_and_the_equation_is_kept() {
    double boils = result(Map.of("altitude", "2000 m")).waterBoilingCelsius();
    assertThat(boils).isCloseTo(93.32, within(0.005));
  }

  @Test
  void water_boils_off_until_the_reading_is_reached() {
    SugarSyrup.Result result =
        result(
            Map.of(
                "sugar", "200 g", "water", "60 g", "temperature", "115 °C", "altitude", "1500 m"));
    assertThat(result.boilingCelsius()).isCloseTo(115, within(1e-6));
    assertThat(result.syrupGrams()).isCloseTo(200 / (result.sugarPercent() / 100), within(1e-9));
    assertThat(result.waterToBoilOffGrams()).isCloseTo(260 - result.syrupGrams(), within(1e-9));
    assertThat(result.sugarPercent())
        .as("the same reading is a thicker syrup than at sea level")
        .isGreaterThan(result(Map.of("temperature", "115 °C")).sugarPercent());
  }

  @Test
  void mass_and_temperature_tell_the_same_syrup() {
    SugarSyrup.Result hot =
        result(Map.of("sugar", "1 kg", "water", "300 g", "temperature", "120 °C"));
    SugarSyrup.Result weighed =
        result(Map.of("sugar", "1 kg", "water", "300 g", "weighed", hot.syrupGrams() + " g"));
    assertThat(weighed.boilingCelsius()).isCloseTo(120, within(1e-6));
    assertThat(weighed.stage()).isEqualTo(hot.stage());
  }

  @Test
  void twice_the_pan_boils_off_twice_the_water() {
    double one =
        result(Map.of("sugar", "200 g", "water", "60 g", "stage", "firm-ball"))
            .waterToBoilOffGrams();
    double two =
        result(Map.of("sugar", "400 g", "water", "120 g", "stage", "firm-ball"))
            .waterToBoilOffGrams();
    assertThat(two).isCloseTo(2 * one, within(1e-9));
  }

  @Test
  void a_thermometer_that_is_off_is_told_apart_from_the_altitude() {
    SugarSyrup.Result off =
        result(Map.of("stage", "soft-ball", "altitude", "1500 m", "boilingWater", "96.98 °C"));
    SugarSyrup.Result right = result(Map.of("stage", "soft-ball", "altitude", "1500 m"));
    assertThat(off.thermometerOffsetCelsius()).isCloseTo(2, within(0.01));
    assertThat(off.waterBoilingCelsius()).isCloseTo(right.waterBoilingCelsius(), within(1e-9));
    assertThat(off.targetCelsius().low()).isCloseTo(right.targetCelsius().low() + 2, within(0.01));
  }

  @Test
  void a_boiling_reading_alone_is_taken_as_the_altitude() {
    SugarSyrup.Result read = result(Map.of("stage", "soft-ball", "boilingWater", "94.98 °C"));
    SugarSyrup.Result told = result(Map.of("stage", "soft-ball", "altitude", "1500 m"));
    assertThat(read.thermometerOffsetCelsius()).isZero();
    assertThat(read.targetCelsius().low()).isCloseTo(told.targetCelsius().low(), within(0.02));
  }

  @Test
  void cooked_too_far_takes_water_back() {
    SugarSyrup.Result result =
        result(
            Map.of(
                "sugar", "200 g", "water", "60 g", "temperature", "125 °C", "stage", "soft-ball"));
    assertThat(result.waterToBoilOffGrams()).isZero();
    assertThat(result.waterToAddGrams()).isBetween(8.0, 25.0);
    assertThat(result.advice()).anyMatch(line -> line.contains("cooked too far"));
  }

  @Test
  void the_modern_equation_and_the_older_table_are_shown_as_a_range() {
    Window range = result(Map.of("sugarPercent", 80)).boilingRange();
    assertThat(range.low()).isCloseTo(109.44, within(0.02));
    assertThat(range.high()).isCloseTo(111.97, within(0.05));
  }

  @Test
  void glucose_in_the_pan_makes_it_an_estimate_and_boil_hotter() {
    Map<String, Object> plain = Map.of("sugar", "250 g", "water", "50 g");
    Map<String, Object> mixed =
        Map.of(
            "sugar",
            "210 g",
            "water",
            "39 g",
            "with",
            List.of(Map.of("ingredient", "invert-sugar", "mass", "51.282 g")));
    assertThat(result(mixed).sugarPercent()).isCloseTo(result(plain).sugarPercent(), within(0.1));
    assertThat(result(mixed).boilingCelsius()).isGreaterThan(result(plain).boilingCelsius());
    assertThat(answer(read(mixed)).remarks())
        .anyMatch(remark -> remark.kind() == Remark.Kind.ESTIMATE);
  }

  @Test
  void every_answer_cautions_and_never_calls_anything_safe() {
    for (SugarSyrup.Input example : calculation().examples()) {
      assertThat(answer(example).remarks())
          .anyMatch(r -> r.kind() == Remark.Kind.CAUTION && r.code().equals("hot-sugar"))
          .noneMatch(r -> r.message().matches("(?i).*\\bsafe\\b.*"));
    }
  }

  @Test
  void the_forecast_narrows_as_readings_come() {
    List<Map<String, Object>> readings = new ArrayList<>();
    double before = Double.POSITIVE_INFINITY;
    for (int minute = 0; minute < 7; minute++) {
      // A steady flame: 0.30 g of water for a gram of sugar at the start, 0.012 g a minute less.
      double water = 0.30 - 0.012 * minute;
      double percent = 100 / (1 + water);
      double celsius = Solutes.SUCROSE.boilingPoint(percent, WaterVapour.SEA_LEVEL_PASCALS);
      readings.add(Map.of("minute", minute, "temperature", celsius + " °C"));
      if (minute >= 1) {
        Forecast forecast =
            result(Map.of("temperature", "118 °C", "readings", List.copyOf(readings))).forecast();
        double goal = 100 / Solutes.SUCROSE.percent(118, WaterVapour.SEA_LEVEL_PASCALS) - 1;
        assertThat(forecast.minute()).isCloseTo((0.30 - goal) / 0.012, within(1e-3));
        assertThat(forecast.low()).isLessThan(forecast.minute());
        double width = forecast.high() - forecast.low();
        assertThat(width).isLessThan(before);
        before = width;
      }
    }
  }

  @Test
  void before_it_boils_the_heating_foretells() {
    Forecast forecast =
        result(
                Map.of(
                    "sugar",
                    "300 g",
                    "water",
                    "90 g",
                    "stage",
                    "firm-ball",
                    "readings",
                    List.of(
                        Map.of("minute", 0, "temperature", "40 °C"),
                        Map.of("minute", 3, "temperature", "80 °C"))))
            .forecast();
    assertThat(forecast.minute()).isBetween(5.0, 20.0);
    assertThat(forecast.low()).isLessThan(forecast.minute());
  }

  @ParameterizedTest(name = "{0} {1}: {2} at {3}")
  @CsvSource({
    "temperature, 85 °C, IMPOSSIBLE, /temperature",
    "temperature, 240 °C, OUT_OF_BOUNDS, /temperature",
    "altitude, 9000 m, OUT_OF_BOUNDS, /altitude",
    "stage, rubber, NOT_ALLOWED, /stage",
    "water, 20 g, MISSING, /sugar",
    "temperature, 115, NO_UNIT, /temperature"
  })
  void what_cannot_be_meant_is_refused(String name, String value, FaultCode code, String pointer) {
    Object given = value.matches("\\d+") ? Integer.valueOf(value) : value;
    Refusals.refused(() -> result(Map.of(name, given)), code, pointer);
  }

  @Test
  void more_sugar_than_the_equation_knows_is_refused() {
    Refusals.refused(
        () -> result(Map.of("sugarPercent", 99.5)), FaultCode.OUT_OF_BOUNDS, "/sugarPercent");
    Refusals.refused(
        () -> result(Map.of("sugar", "200 g", "water", "60 g", "temperature", "180 °C")),
        FaultCode.OUTSIDE_RANGE,
        "/temperature");
    Refusals.refused(
        () -> result(Map.of("sugar", "200 g", "water", "60 g", "weighed", "190 g")),
        FaultCode.OUTSIDE_RANGE,
        "/weighed");
    Refusals.refused(
        () -> result(Map.of("sugar", "200 g", "water", "0 g", "temperature", "120 °C")),
        FaultCode.OUTSIDE_RANGE,
        "/water");
    Refusals.refused(
        () -> result(Map.of("sugar", "200 g", "water", "1 g")), FaultCode.OUTSIDE_RANGE, "/water");
  }

  /** From 160 °C on sugar melts and browns: there is no water left whose boiling could be told. */
  @ParameterizedTest
  @CsvSource({"clear-liquid, 160", "caramel-light, 170", "caramel-dark, 177"})
  void at_caramel_the_temperature_counts_and_no_boiling_point_is_told(String stage, double high) {
    for (String altitude : List.of("0 m", "2000 m")) {
      Answer<SugarSyrup.Result> answer =
          answer(
              read(
                  Map.of("sugar", "200 g", "water", "60 g", "stage", stage, "altitude", altitude)));
      SugarSyrup.Result result = answer.result();
      assertThat(result.targetCelsius()).isNotNull();
      assertThat(result.targetCelsius().high()).isEqualTo(high);
      assertThat(result.stage()).hasToString(stage);
      assertThat(result.boilingCelsius()).isNull();
      assertThat(result.sugarPercent()).isNull();
      assertThat(result.syrupGrams()).isNull();
      assertThat(answer.remarks()).extracting(Remark::code).contains("no-syrup-any-more");
    }
  }

  @Test
  void a_reading_comes_back_as_it_was_given() {
    Map<String, Object> asked =
        Map.of("sugar", "200 g", "water", "60 g", "temperature", "115 °C", "altitude", "1500 m");
    assertThat(result(asked).boilingCelsius()).isEqualTo(115);
    SugarSyrup.Result cracked = result(Map.of("stage", "hard-crack", "altitude", "0 m"));
    assertThat(cracked.targetCelsius().high()).isEqualTo(154);
  }

  @Test
  void readings_out_of_order_or_on_two_scales_are_refused() {
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "stage",
                    "soft-ball",
                    "readings",
                    List.of(
                        Map.of("minute", 3, "temperature", "104 °C"),
                        Map.of("minute", 2, "temperature", "106 °C")))),
        FaultCode.INCONSISTENT,
        "/readings/1/minute");
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "stage",
                    "soft-ball",
                    "readings",
                    List.of(
                        Map.of("minute", 3, "temperature", "104 °C"),
                        Map.of("minute", 4, "temperature", "222 °F")))),
        FaultCode.INCONSISTENT,
        "/readings/1/temperature");
  }

  @Test
  void all_faults_are_told_at_once() {
    Refusals.refused(
        () -> result(Map.of("water", "20 g", "altitude", "100 m", "pressure", "95 kPa")),
        FaultCode.EXACTLY_ONE,
        "/pressure");
    Refusals.refused(
        () -> result(Map.of("water", "20 g", "altitude", "100 m", "pressure", "95 kPa")),
        FaultCode.MISSING,
        "/sugar");
  }
}
