package tamis.engine.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.regex.Pattern;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * An amount of money in one currency (ISO 4217), exact.
 *
 * @param amount without trailing zeros, so that equal amounts are equal
 * @param currency never mixed with another
 */
public record Money(BigDecimal amount, Currency currency) {
  private static final int MOST_DIGITS = 30;
  private static final Pattern AMOUNT = Pattern.compile("-?\\d{1,30}(\\.\\d{1,30})?");

  public Money {
    long whole = (long) amount.precision() - amount.scale();
    if (amount.precision() > MOST_DIGITS || amount.scale() > MOST_DIGITS || whole > MOST_DIGITS) {
      throw Refusal.of(FaultCode.TOO_MANY_DIGITS, "money has at most " + MOST_DIGITS + " digits");
    }
    amount = amount.signum() == 0 ? BigDecimal.ZERO : amount.stripTrailingZeros();
  }

  /**
   * Reads {@code 11.95 EUR}.
   *
   * @throws Refusal if it is no amount with a currency of ISO 4217
   */
  public static Money parse(String text) {
    String[] parts = Cursor.spaced(text).split(" ", -1);
    if (parts.length == 2 && AMOUNT.matcher(parts[0]).matches()) {
      try {
        return new Money(new BigDecimal(parts[0]), Currency.getInstance(parts[1]));
      } catch (IllegalArgumentException unknownCurrency) {
        throw refused(text, "`" + parts[1] + "` is no currency of ISO 4217");
      }
    }
    throw refused(text, "no amount with a currency");
  }

  public static Money zero(Currency currency) {
    return new Money(BigDecimal.ZERO, currency);
  }

  public Money plus(Money other) {
    return new Money(amount.add(same(other)), currency);
  }

  public Money minus(Money other) {
    return new Money(amount.subtract(same(other)), currency);
  }

  public Money times(BigDecimal factor) {
    return new Money(amount.multiply(factor), currency);
  }

  /** Rounded to the smallest coin of the currency. */
  public Money rounded(RoundingMode rounding) {
    return new Money(amount.setScale(minorDigits(), rounding), currency);
  }

  /** Whether it has digits below the smallest coin of its currency: {@code 12.5 JPY}. */
  public boolean isFinerThanCoin() {
    return amount.scale() > minorDigits();
  }

  private BigDecimal same(Money other) {
    if (!currency.equals(other.currency)) {
      throw new Refusal(
          new Fault(
              FaultCode.INCONSISTENT,
              "",
              other.toString(),
              currency.getCurrencyCode(),
              "money of two currencies is not added: " + this + " and " + other));
    }
    return other.amount;
  }

  private int minorDigits() {
    return Math.max(0, currency.getDefaultFractionDigits());
  }

  private static Refusal refused(String given, String why) {
    return new Refusal(
        new Fault(
            FaultCode.UNREADABLE_QUANTITY,
            "",
            given,
            "an amount and a currency, for example 11.95 EUR",
            "`" + given + "` is not readable as money: " + why + "; write for example 11.95 EUR"));
  }

  /** With at least the digits of the smallest coin: {@code 4.40 EUR}. */
  @Override
  public String toString() {
    BigDecimal shown = amount.scale() < minorDigits() ? amount.setScale(minorDigits()) : amount;
    return shown.toPlainString() + " " + currency.getCurrencyCode();
  }
}
