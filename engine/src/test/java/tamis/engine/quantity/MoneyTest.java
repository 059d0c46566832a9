package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

class MoneyTest {
  private static final Currency EUR = Currency.getInstance("EUR");

  @ParameterizedTest(name = "{0} is written {1}")
  @CsvSource({
    "4.4 EUR, 4.40 EUR",
    "4.40 EUR, 4.40 EUR",
    "0 EUR, 0.00 EUR",
    "-0.00 EUR, 0.00 EUR",
    "-3.5 EUR, -3.50 EUR",
    "0.125 EUR, 0.125 EUR",
    "1200 JPY, 1200 JPY",
    "1.5 KWD, 1.500 KWD",
    "100 EUR, 100.00 EUR",
    "999999999999999999999999999999 EUR, 999999999999999999999999999999 EUR"
  })
  void an_amount_has_at_least_the_digits_of_its_smallest_coin(String text, String written) {
    assertThat(Money.parse(text)).hasToString(written.replace("999 EUR", "999.00 EUR"));
  }

  @Test
  void any_kind_of_space_stands_between_amount_and_currency() {
    assertThat(Money.parse(" 11.95\u00a0EUR ")).isEqualTo(Money.parse("11.95 EUR"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "11.95",
        "EUR",
        "11,95 EUR",
        "1'000 EUR",
        "11.95 eur",
        "11.95 EURO",
        "€ 11.95",
        "EUR 11.95",
        "11.95EUR",
        "+1 EUR",
        "1e3 EUR",
        ".5 EUR",
        "5. EUR",
        "NaN EUR",
        "1 2 EUR",
        "1234567890123456789012345678901 EUR",
        "0.1234567890123456789012345678901 EUR"
      })
  void what_is_no_amount_with_a_currency_is_refused(String text) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> Money.parse(text));
    assertThat(refusal.faults()).hasSize(1);
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.UNREADABLE_QUANTITY);
    assertThat(refusal.faults().get(0).message()).contains("for example 11.95 EUR");
  }

  @Test
  void equal_amounts_are_equal_whatever_their_zeros() {
    assertThat(new Money(new BigDecimal("2.50"), EUR)).isEqualTo(Money.parse("2.5 EUR"));
    assertThat(new Money(new BigDecimal("0E-20"), EUR)).isEqualTo(Money.zero(EUR));
    assertThat(new Money(new BigDecimal("1E+2"), EUR)).hasToString("100.00 EUR");
  }

  @ParameterizedTest
  @CsvSource({"1E+100000000", "1E-100000000", "1E+30", "1E-31"})
  void an_amount_with_too_many_digits_is_refused_before_it_is_written_out(String amount) {
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> new Money(new BigDecimal(amount), EUR));
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.TOO_MANY_DIGITS);
  }

  @Test
  void money_of_two_currencies_is_not_added() {
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Money.parse("1 EUR").plus(Money.parse("1 JPY")));
    assertThat(refusal).hasMessageContaining("1.00 EUR and 1 JPY");
  }

  @Test
  void sums_are_exact_and_rounding_is_asked_for() {
    Money third = Money.parse("0.1 EUR").plus(Money.parse("0.2 EUR"));
    assertThat(third).isEqualTo(Money.parse("0.3 EUR"));
    assertThat(third.minus(Money.parse("0.3 EUR"))).isEqualTo(Money.zero(EUR));
    assertThat(Money.parse("1.005 EUR").rounded(RoundingMode.HALF_UP)).hasToString("1.01 EUR");
    assertThat(Money.parse("1.0005 KWD").rounded(RoundingMode.HALF_UP)).hasToString("1.001 KWD");
    assertThat(Money.parse("1.5 JPY").rounded(RoundingMode.HALF_UP)).hasToString("2 JPY");
    assertThat(Money.parse("2.5 EUR").times(new BigDecimal("1.1"))).hasToString("2.75 EUR");
  }
}
