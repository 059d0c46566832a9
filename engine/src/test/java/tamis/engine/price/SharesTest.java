package tamis.engine.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;

class SharesTest {
  @ParameterizedTest(name = "{0} {1} are shown as {2}, together {3}")
  @CsvSource({
    "0.333;0.333;0.334, EUR, 0.33 EUR;0.33 EUR;0.34 EUR, 1.00 EUR",
    "0.005;0.005, EUR, 0.01 EUR;0.00 EUR, 0.01 EUR",
    "0.5;0.5;0.5, JPY, 1 JPY;1 JPY;0 JPY, 2 JPY",
    "1.0005;1.0005, KWD, 1.001 KWD;1.000 KWD, 2.001 KWD",
    "2.004;-0.503, EUR, 2.00 EUR;-0.50 EUR, 1.50 EUR",
    "0, EUR, 0.00 EUR, 0.00 EUR",
  })
  void worked_by_hand(String exact, String currency, String shown, String total) {
    List<BigDecimal> amounts = new ArrayList<>();
    for (String one : exact.split(";")) {
      amounts.add(new BigDecimal(one));
    }
    Shares shares = Shares.of(amounts, Currency.getInstance(currency));
    assertThat(shares.parts()).extracting(Money::toString).containsExactly(shown.split(";"));
    assertThat(shares.total()).hasToString(total);
  }

  @Test
  void what_is_shown_adds_up_and_is_never_a_coin_off() {
    long seed = Long.getLong("tamis.seed", 3L);
    Random random = new Random(seed);
    for (String code : List.of("EUR", "JPY", "KWD")) {
      Currency currency = Currency.getInstance(code);
      BigDecimal coin = BigDecimal.ONE.movePointLeft(currency.getDefaultFractionDigits());
      for (int round = 0; round < 500; round++) {
        List<BigDecimal> amounts = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(40); i++) {
          amounts.add(BigDecimal.valueOf(random.nextInt(2_000_000) - 500_000, 5));
        }
        Shares shares = Shares.of(amounts, currency);
        Money sum = Money.zero(currency);
        for (int i = 0; i < amounts.size(); i++) {
          Money one = shares.parts().get(i);
          sum = sum.plus(one);
          assertThat(one.amount().subtract(amounts.get(i)).abs())
              .as("seed %d", seed)
              .isLessThan(coin);
        }
        assertThat(sum).as("seed %d, %s", seed, amounts).isEqualTo(shares.total());
      }
    }
  }

  @Test
  void a_rate_turns_one_currency_into_another_and_none_is_guessed() {
    Money euros = Money.parse("10 EUR");
    Money dollars = Money.parse("10 USD");
    Rates rates = Rates.of(null, Map.of("USD", new BigDecimal("0.9")), List.of(dollars, euros));
    assertThat(rates).isNotNull();
    assertThat(rates.currency().getCurrencyCode()).isEqualTo("EUR");
    assertThat(rates.amount(dollars)).isEqualByComparingTo("9");
    assertThat(rates.amount(euros)).isEqualByComparingTo("10");
    assertThat(Rates.of(null, Map.of(), List.of())).isNull();
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> Rates.of("CHF", Map.of(), List.of(dollars, euros)));
    assertThat(refusal.faults().get(0).message()).contains("USD and one EUR is worth in CHF");
  }

  @Test
  void codes_and_rates_that_cannot_be_are_told_together() {
    Faults faults = new Faults();
    Rates.check("euro", Map.of("USD", BigDecimal.ZERO), faults);
    assertThat(faults.size()).isEqualTo(2);
  }
}
