package tamis.plugin.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;
import tamis.plugin.dough.FrictionFactor.Input;
import tamis.plugin.dough.FrictionFactor.Result;

class FrictionFactorTest extends CalculationContract<Input, Result> {
  @Override
  protected Calculation<Input, Result> calculation() {
    return new FrictionFactor();
  }

  @Override
  protected Plugin plugin() {
    return new DoughPlugin();
  }

  @ParameterizedTest(name = "{0}: {7} °F ({9})")
  @CsvFileSource(resources = "/friction-factor.csv", numLinesToSkip = 1)
  void friction_matches_the_worked_examples(
      String example,
      String flour,
      String room,
      String water,
      String preferment,
      String measured,
      double frictionKelvins,
      double frictionFahrenheit,
      double tolerance,
      String source) {
    Map<String, Object> input = input(flour, room, water, measured);
    if (preferment != null) {
      input.put("prefermentTemperature", preferment);
    }

    Result result = result(input);

    assertThat(result.frictionKelvins()).as(source).isCloseTo(frictionKelvins, within(tolerance));
    assertThat(result.frictionFahrenheit())
        .as(source)
        .isCloseTo(frictionFahrenheit, within(tolerance));
    assertThat(result.temperaturesCounted()).isEqualTo(preferment == null ? 3 : 4);
  }

  @Test
  void it_says_with_how_many_temperatures_it_holds() {
    Map<String, Object> input = input("19 °C", "21 °C", "20 °C", "24 °C");
    assertThat(codes(input)).containsExactly("friction-of-three");

    input.put("prefermentTemperature", "24 °C");
    assertThat(codes(input)).containsExactly("friction-of-four");
  }

  @Test
  void a_dough_colder_than_its_ingredients_is_doubted() {
    assertThat(codes(input("22 °C", "22 °C", "22 °C", "21 °C"))).contains("friction-negative");
    assertThat(codes(input("22 °C", "22 °C", "22 °C", "22 °C")))
        .doesNotContain("friction-negative");
  }

  @Test
  void ice_is_no_water() {
    Map<String, Object> input = input("22 °C", "22 °C", "-1 °C", "22 °C");

    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));

    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly("/waterTemperature");
  }

  private static Map<String, Object> input(
      String flour, String room, String water, String measured) {
    Map<String, Object> input = new LinkedHashMap<>();
    input.put("flourTemperature", flour);
    input.put("roomTemperature", room);
    input.put("waterTemperature", water);
    input.put("measured", measured);
    return input;
  }

  private List<String> codes(Map<String, ?> input) {
    return answer(read(input)).remarks().stream().map(Remark::code).toList();
  }
}
