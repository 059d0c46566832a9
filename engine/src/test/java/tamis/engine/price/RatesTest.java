package tamis.engine.price;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;

/** Which currency is counted in. */
class RatesTest {
  private static final List<Money> BOTH = List.of(Money.parse("1.20 USD"), Money.parse("3.00 EUR"));

  @Test
  void the_one_without_a_rate_is_counted_in() {
    Rates rates = Rates.of(null, Map.of("USD", new BigDecimal("0.5")), BOTH);
    assertThat(rates).isNotNull();
    assertThat(rates.currency().getCurrencyCode()).isEqualTo("EUR");
    assertThat(rates.amount(BOTH.get(0))).isEqualByComparingTo("0.6");
  }

  @Test
  void rates_of_all_are_no_answer_to_which_is_counted_in() {
    Map<String, BigDecimal> all = Map.of("USD", new BigDecimal("2"), "EUR", new BigDecimal("3"));
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> Rates.of(null, all, BOTH));
    assertThat(refusal.faults())
        .extracting(Fault::code, Fault::pointer, Fault::given)
        .containsExactly(tuple(FaultCode.MISSING, "/currency", "USD and EUR"));
    assertThat(Rates.of("CHF", all, BOTH).amount(BOTH.get(1))).isEqualByComparingTo("9");
  }

  @Test
  void a_rate_is_never_guessed() {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> Rates.of(null, Map.of(), BOTH));
    assertThat(refusal.faults())
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/rates"));
    assertThat(Rates.of(null, Map.of(), List.of())).isNull();
  }
}
