package tamis.plugin.conversion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class ConversionTest extends CalculationContract<Conversion.Input, Conversion.Result> {
  @Override
  protected Calculation<Conversion.Input, Conversion.Result> calculation() {
    return new Conversion();
  }

  @Override
  protected Plugin plugin() {
    return new ConversionPlugin();
  }

  private static Map<String, Object> input(
      String quantity, String ingredient, String state, String measures, String unit) {
    Map<String, Object> input = new LinkedHashMap<>();
    String[] names = {"quantity", "ingredient", "state", "measures", "unit"};
    String[] values = {quantity, ingredient, state, measures, unit};
    for (int i = 0; i < names.length; i++) {
      if (values[i] != null) {
        input.put(names[i], values[i]);
      }
    }
    return input;
  }

  private Answer<Conversion.Result> answer(String quantity, String ingredient, String unit) {
    return answer(read(input(quantity, ingredient, null, null, unit)));
  }

  @ParameterizedTest(name = "{0} {1} {2} is {5} {4} ({8})")
  @CsvFileSource(resources = "/conversion.csv", delimiter = '|', numLinesToSkip = 1)
  void quantities_in_another_unit(
      String quantity,
      String ingredient,
      String state,
      String measures,
      String unit,
      double amount,
      double low,
      double high,
      String source) {
    Conversion.Result result = result(input(quantity, ingredient, state, measures, unit));
    assertThat(result.amount()).as(source).isEqualTo(amount, within(1e-6));
    assertThat(result.low()).as("low").isEqualTo(low, within(1e-3));
    assertThat(result.high()).as("high").isEqualTo(high, within(1e-3));
    assertThat(result.low()).isLessThanOrEqualTo(result.amount());
    assertThat(result.unit()).isNotBlank();
  }

  @ParameterizedTest(name = "{0} {1} in {4}: {5} at {6}")
  @CsvFileSource(resources = "/conversion-refusals.csv", delimiter = '|', numLinesToSkip = 1)
  void what_cannot_be_converted_is_refused_with_its_place(
      String quantity,
      String ingredient,
      String state,
      String measures,
      String unit,
      String code,
      String pointer) {
    Map<String, Object> input = input(quantity, ingredient, state, measures, unit);
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults())
        .extracting(fault -> fault.code().toString(), Fault::pointer)
        .containsExactly(tuple(code, pointer));
    assertThat(refusal.getMessage()).isNotBlank();
  }

  @Test
  void all_that_cannot_be_read_is_told_at_once() {
    Map<String, Object> input = input("1 cop", "unobtainium", null, "mars", "gg");
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal.faults())
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/quantity", "/ingredient", "/measures", "/unit");
  }

  @Test
  void there_and_back_is_where_it_was() {
    for (String unit : new String[] {"oz", "lb", "kg", "cup", "tbsp", "ml", "stick"}) {
      double there = answer("250 g", "butter-unsalted", unit).result().amount();
      double back = answer(there + " " + unit, "butter-unsalted", "g").result().amount();
      assertThat(back).as(unit).isEqualTo(250, within(1e-9));
    }
  }

  @Test
  void measures_that_are_not_told_are_remarked_on_where_they_stand() {
    assertThat(answer("1 cup", "water", "g").remarks())
        .extracting(Remark::code, Remark::pointer)
        .containsExactly(tuple("measure-assumed", "/quantity"));
    assertThat(answer("100 g", "all-purpose-flour", "cup").remarks())
        .extracting(Remark::code, Remark::pointer)
        .containsExactly(tuple("measure-assumed", "/unit"));
    assertThat(answer("100 g", null, "oz").remarks()).isEmpty();
    assertThat(answer(read(input("1 cup", null, null, "us", "ml"))).remarks()).isEmpty();
  }

  @ParameterizedTest(name = "{0} {1} in {2}: {3}, {4}")
  @CsvSource({
    "a pinch, salt, g, imprecise-measure, ESTIMATE",
    "2-3 g, salt, oz, not-needed, REMARK",
    "100-200 ml, water, g, range, ESTIMATE",
    "3 each, egg, g, size-assumed, REMARK",
    "1 lb, butter-unsalted, g, not-needed, REMARK",
  })
  void what_the_figure_hides_is_remarked_on(
      String quantity, String ingredient, String unit, String code, Remark.Kind kind) {
    assertThat(answer(quantity, ingredient, unit).remarks())
        .extracting(Remark::code, Remark::kind)
        .contains(tuple(code, kind));
  }

  @Test
  void the_rows_it_rests_on_are_named() {
    assertThat(answer("1 cup", "all-purpose-flour", "g").sources())
        .extracting(Cited::table, Cited::row)
        .contains(tuple("densities", "all-purpose-flour/as-measured/cup"));
    assertThat(answer("1 stick", "butter-unsalted", "g").sources())
        .extracting(Cited::table, Cited::row)
        .contains(tuple("pieces", "butter-unsalted/stick/"));
    assertThat(answer("350 °F", null, "°C").sources())
        .extracting(Cited::table)
        .containsOnly("units");
  }

  @ParameterizedTest(name = "{0} {1} in {2}, {3}: {4}")
  @CsvSource({
    "2 1/4 cup, all-purpose-flour, g, metric, 281 g",
    "2 1/4 cup, all-purpose-flour, g, , 281 g",
    "2 1/4 cup, all-purpose-flour, g, us, 9 7/8 oz",
    "1 kg, , lb, us, 2 lb 3 1/2 oz",
    "2.5 lb, , g, metric, 1.135 kg",
    "100 g, all-purpose-flour, ml, us, 3/4 cup",
    "100 g, all-purpose-flour, ml, metric, 189 ml",
    "350 °F, , °C, us, 177 °C",
    "3 each, egg, g, , 150 g",
    "150 g, egg, each, , ",
  })
  void the_display_is_what_a_scale_or_spoon_can_measure(
      String quantity, String ingredient, String unit, String units, String display) {
    Map<String, Object> input = input(quantity, ingredient, null, null, unit);
    if (units != null) {
      input.put("units", units);
    }
    assertThat(result(input).display()).isEqualTo(display);
  }

  @Test
  void a_name_of_an_ingredient_is_as_good_as_its_id() {
    assertThat(answer("1 cup", "All-Purpose  Flour", "g").result())
        .isEqualTo(answer("1 cup", "all-purpose-flour", "g").result());
  }
}
