package tamis.plugin.intake.line;

import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Tongue;

/** What is added to an amount or taken off it, and where a range with units ends. */
record Sums(MeasureReader reader) {

  /** "plus 2 tablespoons", "less 1 tablespoon", "1 lb 2 oz", "1 cup to 1 1/4 cups". */
  Measure of(Measure first) {
    Measure sum = first;
    for (int more = 0; more < 3; more++) {
      @Nullable Measure next = oneMore(sum);
      if (next == null) {
        return sum;
      }
      sum = next;
    }
    return sum;
  }

  private @Nullable Measure oneMore(Measure sum) {
    @Nullable Measure rest =
        reader.phrase().is(sum.next(), "+") ? reader.single(sum.next() + 1) : null;
    if (rest != null && rest.unit() != null && sum.unit() == null) {
      return bare(sum, rest);
    }
    if (rest != null && rest.unit() != null && sum.container()) {
      return open(sum, rest);
    }
    if (sum.unit() == null) {
      return null;
    }
    int at = sum.next();
    Tongue.@Nullable Match plus = reader.tongue().match("plus", reader.phrase(), at);
    Tongue.@Nullable Match less = reader.tongue().match("less", reader.phrase(), at);
    if (reader.phrase().is(at, "+")) {
      plus = new Tongue.Match("+", at + 1);
    }
    Tongue.@Nullable Match to = reader.phrase().isDash(at) ? new Tongue.Match("-", at + 1) : null;
    if (to == null) {
      to = reader.tongue().match("to", reader.phrase(), at);
    }
    int from = plus != null ? plus.next() : less != null ? less.next() : at;
    if (plus == null && less == null && to != null && !sum.container()) {
      return range(sum, reader.single(to.next()));
    }
    @Nullable Measure other = reader.single(from);
    if (other != null && other.unit() == null && plus != null && other.high() < 1) {
      return other.amount().worded() // "a cup and a half of"
          ? sum.of(sum.amount().plus(other.low(), other.next()), other.next())
          : null;
    }
    if (other == null || other.unit() == null || other.container() || sum.container()) {
      return null;
    }
    if (plus == null && less == null && !isSmaller(other.unit(), sum.unit())) {
      return null;
    }
    @Nullable Double factor = reader.factor(other.unit(), sum.unit());
    if (factor == null || sum.amount().isRange() || other.amount().isRange()) {
      return null;
    }
    double change = other.low() * factor * (less == null ? 1 : -1);
    Amount total = sum.amount().plus(change, other.next());
    return total.low() < 0 ? null : sum.of(total, other.next());
  }

  /** "55 + 55 g". */
  private static @Nullable Measure bare(Measure first, Measure rest) {
    boolean plain = !rest.container() && !first.amount().isRange() && !rest.amount().isRange();
    return plain ? rest.of(rest.amount().plus(first.low(), rest.next()), rest.next()) : null;
  }

  /** "1 stick + 2 tbsp butter": what one holds is not known here. */
  private Measure open(Measure things, Measure rest) {
    Amount all = things.amount();
    String written = reader.phrase().text(all.next() - 1, rest.next());
    String doubt = all.doubt() == null ? "`" + written + "` is not added up" : all.doubt();
    return things.of(
        new Amount(all.low(), all.high(), all.next(), all.worded(), doubt), rest.next());
  }

  /** Both together, if they measure the same. */
  @Nullable Measure together(Measure one, Measure other) {
    @Nullable Double factor =
        one.unit() == null || other.unit() == null ? null : reader.factor(other.unit(), one.unit());
    return factor == null || one.amount().isRange() || other.amount().isRange()
        ? null
        : one.of(one.amount().plus(other.low() * factor, other.next()), other.next());
  }

  private @Nullable Measure range(Measure low, @Nullable Measure high) {
    if (high == null || high.unit() == null || low.amount().isRange() || high.amount().isRange()) {
      return null;
    }
    @Nullable Double factor = reader.factor(high.unit(), String.valueOf(low.unit()));
    return factor == null
        ? null
        : low.of(low.amount().to(high.amount().times(factor)), high.next());
  }

  private boolean isSmaller(String small, String large) {
    @Nullable Double factor = reader.factor(small, large);
    return factor != null && factor < 1;
  }
}
