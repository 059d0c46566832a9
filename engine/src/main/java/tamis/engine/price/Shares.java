package tamis.engine.price;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.stream.IntStream;
import tamis.engine.quantity.Money;

/**
 * Rounds amounts to the smallest coin so that those shown add up to the total shown: the total is
 * rounded once, every amount down, and the coins that are missing go to the largest remainders; of
 * equal remainders to the earlier.
 *
 * @param total the exact sum, rounded half up
 * @param parts the amounts, in their order
 */
public record Shares(Money total, List<Money> parts) {
  public Shares {
    parts = List.copyOf(parts);
  }

  public static Shares of(List<BigDecimal> exact, Currency currency) {
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    BigDecimal sum = exact.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
    BigDecimal total = sum.setScale(digits, RoundingMode.HALF_UP);
    List<BigDecimal> down = new ArrayList<>(exact.size());
    BigDecimal rest = total;
    for (BigDecimal one : exact) {
      BigDecimal floor = one.setScale(digits, RoundingMode.FLOOR);
      down.add(floor);
      rest = rest.subtract(floor);
    }
    BigDecimal coin = BigDecimal.ONE.movePointLeft(digits);
    int coins = rest.movePointRight(digits).intValueExact();
    IntStream.range(0, exact.size())
        .boxed()
        .sorted(Comparator.comparing((Integer i) -> down.get(i).subtract(exact.get(i))))
        .limit(coins)
        .forEach(i -> down.set(i, down.get(i).add(coin)));
    return new Shares(
        new Money(total, currency), down.stream().map(one -> new Money(one, currency)).toList());
  }

  /** One amount by itself. */
  public static Money rounded(BigDecimal exact, Currency currency) {
    int digits = Math.max(0, currency.getDefaultFractionDigits());
    return new Money(exact.setScale(digits, RoundingMode.HALF_UP), currency);
  }
}
