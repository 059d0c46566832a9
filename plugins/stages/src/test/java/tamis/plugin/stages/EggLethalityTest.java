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

class EggLethalityTest extends CalculationContract<EggLethality.Input, EggLethality.Result> {
  @Override
  protected Calculation<EggLethality.Input, EggLethality.Result> calculation() {
    return new EggLethality();
  }

  @Override
  protected Plugin plugin() {
    return new StagesPlugin();
  }

  private static Map<String, Object> at(double minute, double celsius) {
    return Map.of("minute", minute, "temperature", celsius + " °C");
  }

  private EggLethality.Result held(String product, double celsius, double minutes) {
    return result(
        Map.of("product", product, "readings", List.of(at(0, celsius), at(minutes, celsius))));
  }

  @ParameterizedTest(name = "{0} with {1} % at {2} °C for {3} min: {4}")
  @CsvFileSource(resources = "lethality.csv", numLinesToSkip = 1)
  void reductions_are_those_of_the_published_resistance(
      String product,
      double sugar,
      double celsius,
      double minutes,
      double expected,
      String source) {
    Resistance resistance = Resistance.of(EggProduct.valueOf(product.toUpperCase()), sugar);
    assertThat(resistance.reductions(minutes, celsius, celsius, resistance.z()))
        .isCloseTo(expected, within(0.01));
    EggLethality.Result told =
        result(
            Map.of(
                "product",
                product,
                "sugar",
                sugar + " %",
                "readings",
                List.of(at(0, celsius), at(minutes, celsius))));
    assertThat(told.logReduction()).isCloseTo(Math.min(7, expected), within(0.01));
    assertThat(told.atLeast()).isEqualTo(expected > 7);
  }

  @ParameterizedTest(name = "{0}/{1} and {2}/{3}: z {4}")
  @CsvSource({"60, 0.28, 62.2, 0.087, 4.33", "55.1, 7.99, 58.3, 1.00, 3.55"})
  void z_follows_from_two_times(double one, double dOne, double two, double dTwo, double expected) {
    double z = (two - one) / Math.log10(dOne / dTwo);
    assertThat(z).isCloseTo(expected, within(0.02));
    assertThat(Resistance.of(EggProduct.WHITE, 0).zLow()).isLessThanOrEqualTo(z);
    assertThat(Resistance.of(EggProduct.WHITE, 0).zHigh()).isGreaterThanOrEqualTo(z - 0.01);
  }

  @Test
  void never_more_than_seven_is_told() {
    EggLethality.Result result = held("yolk", 60, 6.2);
    assertThat(result.logReduction()).isEqualTo(7);
    assertThat(result.atLeast()).isTrue();
    assertThat(result.high()).isEqualTo(7);
    assertThat(result.dMinutes()).isCloseTo(0.40, within(1e-9));
    assertThat(result.zCelsius()).isEqualTo(4.6);
  }

  @Test
  void sugar_protects() {
    assertThat(held("sugared-yolk", 60, 3.5).logReduction()).isLessThan(1);
    assertThat(held("yolk", 60, 1).logReduction()).isCloseTo(2.5, within(1e-9));
    assertThat(held("sugared-yolk", 60, 1).logReduction()).isCloseTo(0.25, within(1e-9));
  }

  @Test
  void a_rising_temperature_lies_between_its_ends_and_a_finer_series_agrees() {
    double ramp =
        result(Map.of("product", "sugared-yolk", "readings", List.of(at(0, 56), at(4, 62))))
            .logReduction();
    assertThat(ramp)
        .isBetween(
            held("sugared-yolk", 56, 4).logReduction(), held("sugared-yolk", 62, 4).logReduction());
    double halves =
        result(
                Map.of(
                    "product",
                    "sugared-yolk",
                    "readings",
                    List.of(at(0, 56), at(2, 59), at(4, 62))))
            .logReduction();
    assertThat(halves).isCloseTo(ramp, within(1e-9));
  }

  @Test
  void time_below_the_range_counts_nothing() {
    double warmed =
        result(
                Map.of(
                    "product",
                    "sugared-yolk",
                    "readings",
                    List.of(at(0, 20), at(1, 54.9), at(1.001, 60), at(3.001, 60))))
            .logReduction();
    assertThat(warmed).isCloseTo(0.5, within(0.01));
  }

  @Test
  void the_table_of_pasteurisation_stands_beside_it() {
    EggLethality.Result yolk = held("yolk", 61.11, 3.5);
    assertThat(yolk.pasteurisation())
        .extracting(EggLethality.Hold::product)
        .containsOnly("plain yolk");
    assertThat(yolk.pasteurisation())
        .filteredOn(hold -> hold.minutes() == 3.5)
        .singleElement()
        .satisfies(hold -> assertThat(hold.heldMinutes()).isCloseTo(3.5, within(1e-9)));
    assertThat(held("yolk", 60.5, 3.5).pasteurisation())
        .filteredOn(hold -> hold.minutes() == 3.5)
        .allSatisfy(hold -> assertThat(hold.heldMinutes()).isZero());
    assertThat(EggLethality.PASTEURISATION.rows()).hasSize(17);
  }

  @Test
  void fahrenheit_and_celsius_of_the_table_agree() {
    EggLethality.PASTEURISATION
        .rows()
        .forEach(
            row ->
                assertThat((row.number("fahrenheit") - 32) / 1.8)
                    .isCloseTo(row.number("celsius"), within(0.006)));
  }

  @Test
  void every_answer_is_an_estimate_with_cautions_and_never_calls_anything_safe() {
    for (EggLethality.Input example : calculation().examples()) {
      assertThat(answer(example).remarks())
          .anyMatch(remark -> remark.kind() == Remark.Kind.ESTIMATE)
          .anyMatch(remark -> remark.kind() == Remark.Kind.CAUTION)
          .noneMatch(remark -> remark.message().matches("(?i).*\\bsafe\\b.*"));
      assertThat(answer(example).result().cautions()).isNotEmpty();
    }
  }

  @Test
  void outside_of_the_source_is_refused() {
    Refusals.refused(() -> held("yolk", 85, 1), FaultCode.OUTSIDE_RANGE, "/readings/0/temperature");
    Refusals.refused(() -> held("yolk", 40, 60), FaultCode.OUTSIDE_RANGE, "/readings");
    Refusals.refused(
        () -> held("white", 60, 1), FaultCode.OUTSIDE_RANGE, "/readings/0/temperature");
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "product", "yolk", "sugar", "50 %", "readings", List.of(at(0, 60), at(1, 60)))),
        FaultCode.OUTSIDE_RANGE,
        "/sugar");
    Refusals.refused(
        () ->
            result(
                Map.of(
                    "product", "white", "sugar", "5 %", "readings", List.of(at(0, 56), at(1, 56)))),
        FaultCode.OUTSIDE_RANGE,
        "/sugar");
  }

  @Test
  void readings_out_of_order_are_refused() {
    Refusals.refused(
        () -> result(Map.of("product", "yolk", "readings", List.of(at(2, 60), at(1, 60)))),
        FaultCode.INCONSISTENT,
        "/readings/1/minute");
    Refusals.refused(
        () -> result(Map.of("product", "yolk", "readings", List.of(at(2, 60)))),
        FaultCode.MISSING,
        "/readings");
  }
}
