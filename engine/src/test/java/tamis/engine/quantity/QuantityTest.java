package tamis.engine.quantity;

import static java.time.Duration.ofSeconds;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

class QuantityTest {
  @ParameterizedTest(name = "{0} is {2} to {3} {4}: {5}")
  @CsvFileSource(resources = "quantities.csv", numLinesToSkip = 1, encoding = "UTF-8")
  void what_bakers_write_is_read(
      String text, String kind, double low, double high, String unit, String why) {
    Quantity quantity = Quantity.parse(text);
    assertThat(quantity.kind()).isEqualTo(Quantity.Kind.valueOf(kind.toUpperCase(Locale.ROOT)));
    assertThat(quantity.low()).isEqualTo(low);
    assertThat(quantity.high()).isEqualTo(high);
    assertThat(quantity.unit()).isEqualTo(unit == null ? "" : unit);
    assertThat(quantity.isRange()).isEqualTo(high > low);
    assertThat(Quantity.parse(quantity.toString())).isEqualTo(quantity);
  }

  @ParameterizedTest(name = "{0} is refused as {1}")
  @CsvFileSource(resources = "refused-quantities.csv", numLinesToSkip = 1, encoding = "UTF-8")
  void what_cannot_be_meant_is_refused_with_a_reason(String text, String code, String says) {
    Fault fault = refusal(text);
    assertThat(fault.code()).hasToString(code);
    assertThat(fault.message()).contains(says);
    assertThat(fault.pointer()).isEmpty();
    assertThat(fault.allowed()).isNotBlank();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\u00a02\u00a01/4\u00a0cup\u00a0",
        "2\u202f1/4\u202fcup",
        "2\u20091/4\u2009cup",
        " \t2   1/4\ncup ",
        "2\u30001/4\u3000cup"
      })
  void every_kind_of_space_is_a_space(String text) {
    assertThat(Quantity.parse(text)).isEqualTo(Quantity.parse("2 1/4 cup"));
  }

  @Test
  void spaces_within_a_unit_may_be_of_any_kind() {
    assertThat(Quantity.parse("8\u00a0fl\u00a0oz").unit()).isEqualTo("fl oz");
    assertThat(Quantity.parse("as\u00a0needed").isAsNeeded()).isTrue();
  }

  static List<String> hugeTexts() {
    String digits = "9".repeat(200_000);
    return List.of(
        digits + " g",
        "0." + digits + " g",
        "1 " + digits + "/2 g",
        "1/" + digits + " g",
        "1e" + digits + " g",
        "1e999999999 g",
        "1e-999999999999 g x",
        "1-" + digits + " g",
        "1 " + "g".repeat(200_000),
        "one " + "and ".repeat(50_000),
        " ".repeat(200_000),
        "half" + " of a".repeat(40_000));
  }

  @ParameterizedTest
  @MethodSource("hugeTexts")
  void a_huge_text_is_refused_quickly_and_not_repeated_whole(String text) {
    Fault fault = assertTimeoutPreemptively(ofSeconds(2), () -> refusal(text));
    assertThat(fault.message().length()).isLessThan(1_100);
    assertThat(String.valueOf(fault.given()).length()).isLessThan(250);
  }

  @Test
  void forty_digits_are_read_and_one_more_is_not() {
    assertThat(Quantity.parse("0." + "1".repeat(39) + " g").amount()).isEqualTo(1 / 9.0);
    assertThat(refusal("0." + "1".repeat(40) + " g").code()).isEqualTo(FaultCode.TOO_MANY_DIGITS);
    assertThat(refusal("1".repeat(41) + " g").code()).isEqualTo(FaultCode.TOO_MANY_DIGITS);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"0", "7", "000000012", "999999999", "1000000000", "12345678901", "3.5", "1e3"})
  void whole_numbers_of_any_length_are_read_as_they_are(String number) {
    assertThat(Quantity.parse(number + " g").low()).isEqualTo(Double.parseDouble(number));
    assertThat(Quantity.parse("1/" + "1" + number + " g").low())
        .isEqualTo(1 / Double.parseDouble("1" + number));
  }

  @Test
  void a_number_too_small_to_tell_from_nothing_is_nothing() {
    assertThat(Quantity.parse("1e-999999999 g").amount()).isZero();
  }

  @Test
  void the_middle_of_a_range_is_its_amount() {
    assertThat(Quantity.parse("2-3 tbsp").amount()).isEqualTo(2.5);
    assertThat(Quantity.parse("2 tbsp").amount()).isEqualTo(2);
  }

  @Test
  void a_quantity_times_a_factor_keeps_its_unit_and_writes_itself_anew() {
    Quantity scaled = Quantity.parse("1 1/2-2 cups").times(3);
    assertThat(scaled).isEqualTo(Quantity.parse("4.5-6 cup"));
    assertThat(scaled).hasToString("4.5-6 cup");
    assertThat(Quantity.parse("68 %").times(3)).isEqualTo(Quantity.parse("68 %"));
    assertThat(Quantity.parse("as needed").times(3)).isEqualTo(Quantity.parse("as needed"));
  }

  @Test
  void a_quantity_made_of_amount_and_unit_is_the_one_that_is_read() {
    assertThat(Quantity.of(2.25, "cups")).isEqualTo(Quantity.parse("2.25 cups"));
    assertThat(Quantity.of(1e-7, "g").amount()).isEqualTo(1e-7);
  }

  @Test
  void what_a_unit_measures_is_known() {
    assertThat(Quantity.parse("2 cups").dimension()).isEqualTo(Dimension.VOLUME);
    assertThat(Quantity.parse("2 oz").dimension()).isEqualTo(Dimension.MASS);
    assertThat(Quantity.parse("2 each").dimension()).isEqualTo(Dimension.COUNT);
    assertThat(Quantity.parse("2 sticks").dimension()).isEqualTo(Dimension.PIECE);
    assertThat(Quantity.parse("2 °C").dimension()).isEqualTo(Dimension.TEMPERATURE);
  }

  private static Fault refusal(String text) {
    try {
      Quantity read = Quantity.parse(text == null ? "" : text);
      throw new AssertionError("read as " + read.low() + " to " + read.high() + " " + read.unit());
    } catch (Refusal refusal) {
      assertThat(refusal.faults()).hasSize(1);
      return refusal.faults().get(0);
    }
  }
}
