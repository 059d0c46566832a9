package tamis.engine.price;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Currency;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;

/**
 * The currency that is counted in, and what one of another is worth in it. No rate is ever guessed.
 *
 * @param currency that is counted in
 * @param worth of one of each other currency, by its code
 */
public record Rates(Currency currency, Map<String, BigDecimal> worth) {
  public Rates {
    worth = Map.copyOf(worth);
  }

  /** Gathers what is wrong with a caller's currency and rates, which are named so in the input. */
  public static void check(
      @Nullable String currency, Map<String, BigDecimal> rates, Faults faults) {
    if (currency != null && !isCode(currency)) {
      faults.add(unknown("/currency", currency));
    }
    rates.forEach(
        (code, rate) -> {
          if (!isCode(code)) {
            faults.add(unknown("/rates/" + code.replace("~", "~0").replace("/", "~1"), code));
          } else if (rate.signum() <= 0 || rate.compareTo(BigDecimal.valueOf(1_000_000_000)) > 0) {
            faults.add(
                new Fault(
                    FaultCode.OUT_OF_BOUNDS,
                    "/rates/" + code,
                    rate.toString(),
                    "more than 0, at most 1000000000",
                    "a rate must be more than 0 and at most 1000000000, was " + rate));
          }
        });
  }

  private static boolean isCode(String code) {
    try {
      return Currency.getInstance(code) != null;
    } catch (IllegalArgumentException unknown) {
      return false;
    }
  }

  private static Fault unknown(String pointer, String code) {
    return new Fault(
        FaultCode.NOT_ALLOWED,
        pointer,
        code,
        "a code of ISO 4217, for example EUR",
        "`" + code + "` is no currency of ISO 4217; write for example EUR");
  }

  /**
   * The rates for all the money that is used, or null if none is and no currency is told.
   *
   * @throws Refusal {@code inconsistent} if two currencies meet without a rate, {@code missing} if
   *     all of several have one, so that any could be the one that is counted in
   */
  public static @Nullable Rates of(
      @Nullable String currency, Map<String, BigDecimal> rates, Collection<Money> used) {
    Set<String> codes = new LinkedHashSet<>();
    used.forEach(money -> codes.add(money.currency().getCurrencyCode()));
    @Nullable String base = currency;
    if (base == null) {
      List<String> unrated = codes.stream().filter(code -> !rates.containsKey(code)).toList();
      if (unrated.isEmpty() && !codes.isEmpty()) {
        throw whichCurrency(codes);
      }
      base = unrated.isEmpty() ? null : unrated.get(0);
    }
    if (base == null) {
      return null;
    }
    String into = base;
    List<String> missing =
        codes.stream().filter(code -> !code.equals(into) && !rates.containsKey(code)).toList();
    if (!missing.isEmpty()) {
      throw new Refusal(
          new Fault(
              FaultCode.INCONSISTENT,
              "/rates",
              String.join(", ", codes),
              "a rate of " + String.join(", ", missing),
              "prices are in "
                  + String.join(" and ", codes)
                  + ": say in `rates` what one "
                  + String.join(" and one ", missing)
                  + " is worth in "
                  + into));
    }
    return new Rates(Currency.getInstance(into), rates);
  }

  private static Refusal whichCurrency(Set<String> codes) {
    String given = String.join(" and ", codes);
    return new Refusal(
        new Fault(
            FaultCode.MISSING,
            "/currency",
            given,
            "the currency that the rates lead into",
            "`rates` says what "
                + given
                + " are worth, but not in which currency; say it in `currency`"));
  }

  /** The amount in the currency that is counted in. */
  public BigDecimal amount(BigDecimal amount, Currency of) {
    if (of.equals(currency)) {
      return amount;
    }
    BigDecimal rate = worth.get(of.getCurrencyCode());
    if (rate == null) {
      throw Refusal.of(FaultCode.INCONSISTENT, "/rates", "no rate of " + of.getCurrencyCode());
    }
    return amount.multiply(rate, Offer.DIGITS);
  }

  public BigDecimal amount(Money money) {
    return amount(money.amount(), money.currency());
  }
}
