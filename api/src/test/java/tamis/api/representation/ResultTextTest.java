package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

class ResultTextTest {
  private static String text(Record result, String rawQuery) {
    Options options = QueryInput.options(rawQuery, new Weighing(), 1000).options();
    return ResultText.of(result, options);
  }

  private static String text(String rawQuery) {
    return text(WeighingResults.usual(), rawQuery);
  }

  @ParameterizedTest
  @CsvSource({
    ", 2.5",
    "pick=/factor, 2.5",
    "pick=/price, 11.50",
    "pick=/portion/grams, 113.4",
    "pick=/lines/0/low, 148.5",
    "pick=/lines/1/grams, 300",
    "pick=/lines/2/how, by-the-cup",
    "pick=/lines/0/ingredient, egg-white",
    "pick=/lines/0/price, 4.40",
    "pick=/bill/egg-white/grams, 225.25",
    "pick=/per100g/protein, 0",
    "decimal=comma, '2,5'",
    "pick=/price&decimal=comma, '11,50'",
    "pick=/bill/egg-white/grams&decimal=comma, '225,25'",
    "pick=/lines/0/ingredient&decimal=comma, egg-white",
    "pick=/per100g/fat&partial=yes, 12.4",
  })
  void one_bare_value_is_given(String query, String text) {
    assertThat(text(query)).isEqualTo(text);
  }

  @Test
  void words_that_are_absent_are_empty_and_figures_that_are_absent_are_a_fault() {
    assertThat(text("pick=/limitedBy")).isEmpty();
    assertThat(text("pick=/lines/1/how")).isEmpty();
    for (String pointer : List.of("/portion/fat", "/lines/1/low", "/lines/1/price")) {
      Fault fault = Refused.only(() -> text("pick=" + pointer));
      assertThat(fault.code()).isEqualTo(FaultCode.INCOMPLETE);
      assertThat(fault.message()).contains(pointer, "partial=yes");
      assertThat(text("partial=yes&pick=" + pointer)).isEmpty();
    }
    assertThat(Refused.at(() -> text("pick=/per100g/starch"))).containsExactly("incomplete /pick");
  }

  @Test
  void a_figure_within_something_absent_is_absent() {
    Weighing.Result result = WeighingResults.of(1, null, List.of());

    assertThat(Refused.at(() -> text(result, "pick=/portion/grams")))
        .containsExactly("incomplete /pick");
    assertThat(Refused.at(() -> text(result, "pick=/portion/weight")))
        .containsExactly("no-such-value /pick");
  }

  @Test
  void a_figure_that_is_known_in_part_is_not_given_as_if_it_were_whole() {
    Fault fault = Refused.only(() -> text("pick=/per100g/fat"));

    assertThat(fault.code()).isEqualTo(FaultCode.INCOMPLETE);
    assertThat(fault.message()).contains("in part");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/facto", "/lines/3/grams", "/lines/-1/grams", "/lines/01/grams", "/lines/x/grams",
        "/factor/grams", "/bill/eg-white", "/per100g/salty", "/", "/lines/99999999999/grams",
        "/portion/bill", "/lines/0/ingredient/x"
      })
  void a_pointer_to_nothing_is_told(String pointer) {
    assertThat(Refused.at(() -> text("pick=" + pointer))).containsExactly("no-such-value /pick");
  }

  @Test
  void what_may_have_been_meant_is_suggested() {
    assertThat(Refused.only(() -> text("pick=/facto")).message()).contains("did you mean factor");
    assertThat(Refused.only(() -> text("pick=/bill/eg-white")).message()).contains("egg-white");
    assertThat(Refused.only(() -> text("pick=/lines/3")).message()).contains("3 entries");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "/lines", "/lines/0", "/portion", "/bill", "/per100g"})
  void what_has_parts_is_no_text(String pointer) {
    Fault fault = Refused.only(() -> text("pick=" + pointer));

    assertThat(fault.code()).isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(fault.allowed()).contains("/factor", "/lines/0/grams", "/portion/fat");
  }

  /** A result without one figure that stands for it. */
  public record Two(
      @Described("One") double one,
      @Described("Other") double other,
      @Described("A/slash") Fraction part,
      @Described(value = "Odd name", name = "a/b~c") boolean odd) {}

  @Test
  void where_nothing_stands_for_the_whole_something_must_be_picked() {
    Two two = new Two(1, 2, new Fraction(0.25), true);

    Fault fault = Refused.only(() -> text(two, null));
    assertThat(fault.code()).isEqualTo(FaultCode.NO_SUCH_VALUE);
    assertThat(fault.allowed()).contains("/one, /other, /part");
    assertThat(text(two, "pick=/other")).isEqualTo("2");
    assertThat(text(two, "pick=/part&decimal=comma")).isEqualTo("0,25");
    assertThat(text(two, "pick=/a~1b~0c")).isEqualTo("true");
    assertThat(fault.allowed()).contains("/a~1b~0c");
  }

  /** A result whose headline lies deeper and is money. */
  public record Deep(@Described("Inner") Inner inner) {
    /** The inner part. */
    public record Inner(
        @Described(value = "Total", headline = true) Money total, @Described("Other") int other) {}
  }

  @Test
  void a_headline_may_lie_deeper_and_be_money() {
    assertThat(text(new Deep(new Deep.Inner(Money.parse("4.4 EUR"), 1)), null)).isEqualTo("4.40");
  }
}
