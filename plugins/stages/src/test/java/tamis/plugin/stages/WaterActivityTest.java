package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class WaterActivityTest extends CalculationContract<WaterActivity.Input, WaterActivity.Result> {
  @Override
  protected Calculation<WaterActivity.Input, WaterActivity.Result> calculation() {
    return new WaterActivity();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  @ParameterizedTest(name = "{0} % sucrose: {1}")
  @CsvFileSource(resources = "water-activities.csv", numLinesToSkip = 1)
  void sucrose_has_the_worked_water_activity(
      double percent, double norrish, double starzakPeacock, double moneyBorn, String source) {
    WaterActivity.Result result = result(Map.of("sucrosePercent", percent));
    assertThat(result.waterActivity()).isCloseTo(norrish, within(1e-4));
    assertThat(method(result, "starzak-peacock")).isCloseTo(starzakPeacock, within(2e-4));
    assertThat(method(result, "money-born")).isCloseTo(moneyBorn, within(1e-4));
    assertThat(result.low()).isLessThanOrEqualTo(result.waterActivity());
    assertThat(result.high()).isGreaterThanOrEqualTo(result.waterActivity());
  }

  private static double method(WaterActivity.Result result, String name) {
    return result.methods().stream()
        .filter(method -> method.method().equals(name))
        .findFirst()
        .orElseThrow()
        .waterActivity();
  }

  @ParameterizedTest(name = "{0} % is paired with {1} in a published table")
  @CsvSource({"55, 0.91", "65, 0.87"})
  void a_published_pairing_agrees_in_two_digits(double percent, double published) {
    assertThat(result(Map.of("sucrosePercent", percent)).waterActivity())
        .isCloseTo(published, within(0.01));
  }

  @Test
  void more_sugar_binds_more_water() {
    double before = 1.0000001;
    for (double percent = 0; percent <= 85; percent += 1) {
      double here = result(Map.of("sucrosePercent", percent)).waterActivity();
      assertThat(here).isLessThan(before);
      before = here;
    }
  }

  @Test
  void a_phase_of_sucrose_is_the_same_syrup() {
    double phase =
        result(Map.of("phase", Map.of("water", "40 g", "solutes", Map.of("sucrose", "60 g"))))
            .waterActivity();
    assertThat(phase)
        .isCloseTo(result(Map.of("sucrosePercent", 60)).waterActivity(), within(1e-12));
  }

  @Test
  void as_much_glucose_binds_more_water_than_sucrose() {
    double glucose =
        result(Map.of("phase", Map.of("water", "40 g", "solutes", Map.of("glucose", "60 g"))))
            .waterActivity();
    assertThat(glucose).isLessThan(result(Map.of("sucrosePercent", 60)).waterActivity());
  }

  @Test
  void limits_are_judged_by_the_higher_method() {
    WaterActivity.Result syrup = result(Map.of("sucrosePercent", 67));
    assertThat(syrup.high()).isCloseTo(0.862, within(0.001));
    assertThat(syrup.limits())
        .filteredOn(limit -> limit.organism().equals("Staphylococcus aureus"))
        .singleElement()
        .satisfies(limit -> assertThat(limit.canGrow()).isTrue());
    assertThat(syrup.limits())
        .filteredOn(limit -> limit.organism().equals("Salmonella"))
        .singleElement()
        .satisfies(limit -> assertThat(limit.canGrow()).isFalse());
  }

  @Test
  void fat_is_outside_of_the_water_phase() {
    Map<String, Object> syrup =
        Map.of(
            "lines",
            List.of(
                Map.of("ingredient", "sugar-granulated", "quantity", "60 g"),
                Map.of("ingredient", "water", "quantity", "40 g")));
    Map<String, Object> filling =
        Map.of(
            "lines",
            List.of(
                Map.of("ingredient", "sugar-granulated", "quantity", "60 g"),
                Map.of("ingredient", "water", "quantity", "40 g"),
                Map.of("ingredient", "cocoa-butter", "quantity", "200 g")));
    double plain = result(Map.of("formula", syrup)).waterActivity();
    assertThat(plain).isCloseTo(0.895, within(0.002));
    assertThat(result(Map.of("formula", filling)).waterActivity()).isCloseTo(plain, within(1e-6));
  }

  @Test
  void keeping_is_cautioned_and_nothing_is_called_safe() {
    for (WaterActivity.Input example : calculation().examples()) {
      assertThat(answer(example).remarks())
          .anyMatch(remark -> remark.kind() == Remark.Kind.CAUTION)
          .noneMatch(remark -> remark.message().matches("(?i).*\\bsafe\\b.*"));
    }
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    Refusals.refused(
        () -> result(Map.of("sucrosePercent", 120)), FaultCode.OUT_OF_BOUNDS, "/sucrosePercent");
    Refusals.refused(() -> result(Map.of()), FaultCode.EXACTLY_ONE, "");
    Refusals.refused(
        () -> result(Map.of("phase", Map.of("water", "40 g", "solutes", Map.of("gold", "60 g")))),
        FaultCode.NOT_ALLOWED,
        "/phase/solutes/gold");
  }
}
