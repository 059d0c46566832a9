package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class HeatBalanceTest extends CalculationContract<HeatBalance.Input, HeatBalance.Result> {
  private static final Map<String, Object> SYRUP = Map.of("water", 15, "carbohydrate", 85);
  private static final Map<String, Object> YOLK =
      Map.of("water", 48.81, "protein", 16.76, "fat", 30.87, "carbohydrate", 1.78, "ash", 1.77);
  private static final Map<String, Object> WHITE =
      Map.of("water", 87.81, "protein", 10.52, "carbohydrate", 1.03, "ash", 0.64);

  @Override
  protected Calculation<HeatBalance.Input, HeatBalance.Result> calculation() {
    return new HeatBalance();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  private static Map<String, Object> part(
      Map<String, Object> composition, double grams, double celsius) {
    return Map.of("composition", composition, "mass", grams + " g", "temperature", celsius + " °C");
  }

  @ParameterizedTest(name = "{1} g {0} at {2} + {3} g syrup at {4}: {5} °C ({7})")
  @CsvFileSource(resources = "heat-balances.csv", numLinesToSkip = 1)
  void egg_and_syrup_come_to_the_worked_temperature(
      String egg,
      double eggGrams,
      double eggCelsius,
      double syrupGrams,
      double syrupCelsius,
      double expected,
      double tolerance,
      String model,
      String source) {
    HeatBalance.Result result =
        result(
            Map.of(
                "parts",
                List.of(
                    part(egg.equals("yolk") ? YOLK : WHITE, eggGrams, eggCelsius),
                    part(SYRUP, syrupGrams, syrupCelsius))));
    double got = model.equals("foods") ? result.low() : result.celsius();
    assertThat(got).isCloseTo(expected, within(tolerance));
    assertThat(result.celsius()).isBetween(result.low(), result.high());
  }

  @Test
  void the_usual_answer_does_not_follow_the_low_model_of_foods_for_a_syrup() {
    HeatBalance.Result result =
        result(Map.of("parts", List.of(part(YOLK, 100, 20), part(SYRUP, 200, 118))));
    assertThat(result.celsius()).isGreaterThan(79);
  }

  @Test
  void equal_masses_of_water_meet_in_the_middle() {
    HeatBalance.Result result =
        result(
            Map.of(
                "parts",
                List.of(
                    Map.of("ingredient", "water", "mass", "500 g", "temperature", "20 °C"),
                    Map.of("ingredient", "water", "mass", "500 g", "temperature", "40 °C"))));
    assertThat(result.celsius()).isCloseTo(30, within(0.05));
  }

  @Test
  void ice_takes_the_heat_of_its_melting() {
    // 30 kg of water at 25 °C and 1.378 kg of ice at -18 °C come to 20 °C: worked by hand.
    HeatBalance.Result result =
        result(
            Map.of(
                "parts",
                List.of(
                    Map.of("ingredient", "water", "mass", "30 kg", "temperature", "25 °C"),
                    Map.of("ingredient", "ice", "mass", "1.378 kg", "temperature", "-18 °C"))));
    assertThat(result.celsius()).isCloseTo(20, within(0.05));
  }

  @Test
  void what_some_give_off_the_others_take_up() {
    Random random = new Random(118);
    for (int i = 0; i < 200; i++) {
      List<Map<String, Object>> parts = new ArrayList<>();
      int count = 2 + random.nextInt(4);
      for (int j = 0; j < count; j++) {
        String[] of = {"egg-yolk", "butter-unsalted", "chocolate-dark", "water", "ice", "honey"};
        parts.add(
            Map.of(
                "ingredient",
                of[random.nextInt(of.length)],
                "mass",
                (1 + random.nextInt(900)) + " g",
                "temperature",
                (random.nextInt(150) - 30) + " °C"));
      }
      Map<String, Object> input =
          Map.of(
              "parts",
              parts,
              "bowl",
              Map.of("mass", "900 g", "material", "steel", "temperature", "21 °C"),
              "pour",
              Map.of("minutes", random.nextInt(5)));
      HeatBalance.Result result = result(input);
      double sum = result.bowlKilojoules() + result.pour().kilojoules();
      double moved = Math.abs(sum) + 1;
      for (HeatBalance.PartHeat part : result.parts()) {
        sum += part.kilojoules();
        moved += Math.abs(part.kilojoules());
      }
      assertThat(sum / moved).as("case %s: %s", i, input).isCloseTo(0, within(1e-9));
    }
  }

  @Test
  void the_order_of_parts_does_not_matter() {
    List<Map<String, Object>> parts =
        new ArrayList<>(
            List.of(
                part(YOLK, 120, 18),
                part(SYRUP, 240, 117),
                Map.of("ingredient", "butter-unsalted", "mass", "300 g", "temperature", "19 °C")));
    double before = result(Map.of("parts", parts)).celsius();
    Collections.reverse(parts);
    assertThat(result(Map.of("parts", parts)).celsius()).isCloseTo(before, within(1e-9));
  }

  @Test
  void more_of_the_hot_part_makes_it_hotter() {
    double before = 20;
    for (int grams = 50; grams <= 500; grams += 50) {
      double celsius =
          result(Map.of("parts", List.of(part(YOLK, 100, 20), part(SYRUP, grams, 118)))).celsius();
      assertThat(celsius).isGreaterThan(before);
      before = celsius;
    }
  }

  private HeatBalance.Result poured(double minutes) {
    return result(
        Map.of(
            "parts",
            List.of(part(WHITE, 150, 20), part(SYRUP, 300, 120)),
            "pour",
            Map.of("minutes", minutes)));
  }

  @Test
  void a_slow_pour_ends_cooler() {
    assertThat(poured(5.5).celsius()).isLessThan(poured(1.5).celsius() - 2);
    assertThat(poured(5.5).pour().arrivesCelsius()).isLessThan(poured(1.5).pour().arrivesCelsius());
    double before = poured(0).celsius();
    for (double minutes = 0.5; minutes <= 10; minutes += 0.5) {
      assertThat(poured(minutes).celsius()).isLessThan(before);
      before = poured(minutes).celsius();
    }
  }

  @Test
  void a_cold_bowl_takes_its_share() {
    Map<String, Object> bowl =
        Map.of("mass", "1.1 kg", "material", "steel", "temperature", "21 °C");
    List<Map<String, Object>> parts = List.of(part(WHITE, 150, 20), part(SYRUP, 300, 120));
    double without = result(Map.of("parts", parts)).celsius();
    assertThat(result(Map.of("parts", parts, "bowl", bowl)).celsius())
        .isBetween(without - 30, without - 5);
  }

  private HeatBalance.Result met(String... fahrenheit) {
    List<Map<String, Object>> parts = new ArrayList<>();
    for (String one : fahrenheit) {
      parts.add(Map.of("name", "part " + one, "temperature", one + " °F"));
    }
    return result(
        Map.of("parts", parts, "window", Map.of("low", "70 °F", "high", "76 °F", "apart", "4 °F")));
  }

  @Test
  void parts_at_75_72_and_76_fahrenheit_can_meet() {
    HeatBalance.Result result = met("75", "72", "76");
    assertThat(result.out()).isEmpty();
    assertThat(result.spreadCelsius()).isCloseTo(4 * 5.0 / 9, within(1e-9));
    assertThat(result.advice()).containsExactly("all parts lie in the window: let them meet now");
  }

  @Test
  void foam_at_73_and_butter_at_68_fahrenheit_cannot() {
    HeatBalance.Result result = met("73", "68");
    assertThat(result.out())
        .singleElement()
        .satisfies(
            out -> {
              assertThat(out.name()).isEqualTo("part 68");
              assertThat(out.side()).isEqualTo("below");
              assertThat(out.deviationCelsius()).isCloseTo(-2 * 5.0 / 9, within(1e-6));
            });
    assertThat(result.advice()).anyMatch(line -> line.contains("apart"));
  }

  @Test
  void with_masses_the_mix_and_its_fat_are_foretold() {
    HeatBalance.Result result =
        result(
            Map.of(
                "parts",
                List.of(
                    Map.of(
                        "name",
                        "foam",
                        "ingredient",
                        "egg",
                        "mass",
                        "300 g",
                        "temperature",
                        "25 °C"),
                    Map.of(
                        "name",
                        "butter",
                        "ingredient",
                        "butter-unsalted",
                        "mass",
                        "400 g",
                        "temperature",
                        "17 °C")),
                "window",
                Map.of("low", "20 °C", "high", "26 °C")));
    assertThat(result.spreadCelsius()).isCloseTo(8, within(1e-9));
    assertThat(result.out()).extracting(HeatBalance.Outside::name).containsExactly("butter");
    assertThat(result.out().get(0).kilojoules()).isGreaterThan(400 * 2.4 * 3 / 1000);
    assertThat(result.celsius()).isBetween(18.5, 22.0);
    assertThat(result.fat().fat()).isEqualTo(FatKind.MILK);
    assertThat(result.advice()).isNotEmpty();
  }

  @Test
  void parts_of_one_temperature_stay_at_it() {
    var cream = Map.of("ingredient", "cream-heavy", "mass", "300 g", "temperature", "20 °C");
    var butter = Map.of("ingredient", "butter-unsalted", "mass", "200 g", "temperature", "20 °C");
    HeatBalance.Result result = result(Map.of("parts", List.of(cream, butter)));
    assertThat(result.celsius()).isEqualTo(20);
    assertThat(result.spreadCelsius()).isZero();
  }

  /** Water at 19.98 °C is not in a window from 20 °C, and not 0.0 °C below it either. */
  @Test
  void a_mix_just_outside_is_told_as_just_outside() {
    var water = Map.of("ingredient", "water", "mass", "300 g", "temperature", "19.98 °C");
    HeatBalance.Result result =
        result(
            Map.of(
                "parts", List.of(water, water), "window", Map.of("low", "20 °C", "high", "26 °C")));
    assertThat(result.advice())
        .contains("together they come to 19.98 °C, just below the window")
        .noneMatch(line -> line.contains("0.0 °C below"));
  }

  @Test
  void melting_butter_takes_more_heat_than_warming_it() {
    Map<String, Object> butter = Map.of("water", 18, "fat", 81, "protein", 1);
    Map<String, Object> melting =
        Map.of("composition", butter, "fat", "milk", "mass", "400 g", "temperature", "17 °C");
    double counted = result(Map.of("parts", List.of(melting, part(SYRUP, 200, 118)))).celsius();
    double ignored =
        result(Map.of("parts", List.of(part(butter, 400, 17), part(SYRUP, 200, 118)))).celsius();
    assertThat(counted).isLessThan(ignored - 3);
  }

  @Test
  void a_composition_has_properties() {
    HeatBalance.Result result =
        result(
            Map.of(
                "composition",
                Map.of(
                    "water",
                    75.33,
                    "protein",
                    12.49,
                    "fat",
                    10.02,
                    "carbohydrate",
                    1.22,
                    "ash",
                    0.94),
                "temperature",
                "20 °C"));
    assertThat(result.specificHeat()).isCloseTo(3.63, within(0.01));
    assertThat(result.density()).isBetween(1020.0, 1050.0);
    assertThat(result.conductivity()).isBetween(0.4, 0.6);
    assertThat(result.celsius()).isNull();
  }

  @Test
  void egg_and_hot_syrup_are_cautioned_and_never_called_safe() {
    List<Remark> remarks = answer(calculation().examples().get(0)).remarks();
    assertThat(remarks)
        .filteredOn(remark -> remark.kind() == Remark.Kind.CAUTION)
        .extracting(Remark::code)
        .contains("raw-egg", "hot-sugar");
    assertThat(remarks).noneMatch(r -> r.message().matches("(?i).*\\bsafe\\b.*"));
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    Refusals.refused(
        () -> result(Map.of("composition", Map.of("water", 80, "fat", 60), "temperature", "20 °C")),
        FaultCode.INCONSISTENT,
        "/composition");
    Refusals.refused(
        () -> result(Map.of("parts", List.of(part(SYRUP, 100, 190)))),
        FaultCode.OUT_OF_BOUNDS,
        "/parts/0/temperature");
    Refusals.refused(
        () -> result(Map.of("parts", List.of(Map.of("temperature", "20 °C")))),
        FaultCode.MISSING,
        "/parts/0/mass");
    Refusals.refused(() -> result(Map.of()), FaultCode.EXACTLY_ONE, "");
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "parts",
                    List.of(part(SYRUP, 100, 90)),
                    "window",
                    Map.of("low", "30 °C", "high", "20 °C"))),
        FaultCode.INCONSISTENT,
        "/window/low");
  }
}
