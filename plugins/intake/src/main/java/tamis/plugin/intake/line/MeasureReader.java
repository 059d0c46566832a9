package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads amounts with their units, what one package holds, and what is added or taken off. */
public record MeasureReader(Tongue tongue, Phrase phrase, Measures measures) {

  /** How the manner of a package begins whose size is said by a word. */
  public static final String A_SIZE = "size: ";

  private static final Set<String> PACKAGES =
      Set.of("can", "package", "packet", "jar", "bottle", "box", "bag", "carton", "tub", "bar");

  /** The whole quantity that begins at a token, or null: with sums and sizes of packages. */
  public @Nullable Measure at(int from) {
    @Nullable Measure first = sized(from);
    return first == null ? unitAlone(from) : summed(first);
  }

  /** "Pinch of salt" is one pinch. */
  private @Nullable Measure unitAlone(int from) {
    Tongue.@Nullable Match unit = tongue.unit(phrase, from);
    @Nullable Unit known = unit == null ? null : unit(unit.value());
    if (unit == null || known == null || unit.next() - from > 2) {
      return null;
    }
    boolean of = tongue.match("of", phrase, unit.next()) != null;
    if (!known.imprecise() && of && isWeight(unit.value())) { // "pound of butter"
      String doubt = "how many, no number stands before `" + phrase.text(from, unit.next()) + "`";
      Amount one = Amount.exactly(1, from, true, doubt);
      return new Measure(one, unit.value(), false, null, List.of(), unit.next());
    }
    if (!known.imprecise()) {
      return null;
    }
    boolean name = phrase.has(unit.next()) && !phrase.is(unit.next(), ",");
    Amount one = Amount.exactly(1, from, true, null);
    return name ? new Measure(one, unit.value(), false, null, List.of(), unit.next()) : null;
  }

  /** "Grammi 150", "kg. 2", "N. 3": the unit, or a word that says a count, stands first. */
  @Nullable Measure unitFirst(int from) {
    Tongue.@Nullable Match unit = tongue.unit(phrase, from);
    Tongue.@Nullable Match count = tongue.match("count", phrase, from);
    int at = unit != null ? unit.next() : count != null ? count.next() : from;
    at = phrase.is(at, ".") ? at + 1 : at;
    @Nullable Amount amount = at == from ? null : new AmountReader(tongue, phrase).at(at);
    if (amount == null || !phrase.isNumber(at)) {
      return null;
    }
    @Nullable String of = unit == null ? null : unit.value();
    return new Measure(amount, of, false, null, List.of(), amount.next());
  }

  /** A measure, or a number of packages of a size. */
  private @Nullable Measure sized(int from) {
    @Nullable Measure first = single(from);
    if (first == null) {
      return null;
    }
    if (first.unit() == null || first.container()) {
      @Nullable Measure packages = packages(first);
      return packages == null ? first : packages;
    }
    Tongue.@Nullable Match thing = tongue.container(phrase, afterHyphen(first.next()));
    if (thing == null || !isPackage(first, thing)) {
      return first;
    }
    if (isRange(first) && first.high() < 4 * first.low()) {
      return first;
    }
    if (isRange(first)) { // "2 - 14 oz cans": two cans, not 2 to 14 ounces
      Measure size =
          first.of(Amount.exactly(first.high(), first.next(), false, null), first.next());
      Amount count = Amount.exactly(first.low(), thing.next(), false, null);
      return first.of(count, thing.next()).counted(thing.value(), size, thing.next());
    }
    Amount one = Amount.exactly(1, thing.next(), false, first.amount().doubt());
    return new Measure(one, thing.value(), true, first, first.manner(), thing.next());
  }

  /** "14-ounce can milk", "14 oz can milk", but not "8 oz cake flour". */
  private boolean isPackage(Measure first, Tongue.Match thing) {
    boolean hyphen = phrase.isDash(first.amount().next()) && phrase.touches(first.amount().next());
    boolean name = phrase.has(thing.next()) && !phrase.is(thing.next(), ",");
    return first.unit() != null
        && isWeight(first.unit())
        && name
        && (hyphen || PACKAGES.contains(thing.value()));
  }

  /** "2 (8-oz) packages", "1 14-ounce can", "1 can (14 oz)", "2 x 400 g cans". */
  private @Nullable Measure packages(Measure count) {
    int at = tongue.behind("size", phrase, count.next());
    boolean times = phrase.is(at, "×") || phrase.is(at, "x") || isTimes(at);
    boolean open = phrase.is(at, "(") || phrase.is(at, "[");
    int inner = times || open ? at + 1 : at;
    inner = open ? tongue.behind("about", phrase, inner) : inner;
    @Nullable Measure size = phrase.isNumber(inner) ? single(inner) : null;
    if (size == null || size.unit() == null || size.container() || !isWeight(size.unit())) {
      return null;
    }
    int behind = open ? phrase.behindParenthesis(at) : size.next();
    if (behind < 0) {
      return null;
    }
    boolean each = saysEach(size.next(), open ? behind - 1 : size.next(), behind);
    if (open && size.next() < behind - 1 && !each && !alsoInAnotherUnit(size.next(), behind - 1)) {
      return null;
    }
    if (count.unit() != null) {
      return ofEach(count, size, behind, each);
    }
    Tongue.@Nullable Match thing = tongue.container(phrase, afterHyphen(behind));
    if (thing != null) {
      return count.counted(thing.value(), size, thing.next());
    }
    return times ? count.counted("each", size, behind) : null;
  }

  /** "8 oz each", within the bracket or behind it. */
  private boolean saysEach(int from, int to, int behind) {
    Tongue.@Nullable Match inside = from < to ? tongue.unit(phrase, from) : null;
    boolean said = inside != null && inside.value().equals("each") && inside.next() == to;
    return said || (phrase.isWord(behind) && phrase.folded(behind, behind + 1).equals("each"));
  }

  /**
   * "1 can (14 oz)" is what one holds; of "2 cans (28 oz)" nobody knows whether it is of each. "2
   * sticks (8 oz)" says the whole once more: what one weighs is known.
   */
  private @Nullable Measure ofEach(Measure count, Measure size, int behind, boolean each) {
    String thing = String.valueOf(count.unit());
    if (!each && !PACKAGES.contains(thing)) {
      return null;
    }
    if (each || count.high() <= 1) {
      return count.counted(thing, size, behind);
    }
    String doubt =
        "whether " + phrase.text(size.amount().next() - 1, size.next()) + " is of each or of all";
    Amount unsure =
        new Amount(
            count.low(), count.high(), count.amount().next(), count.amount().worded(), doubt);
    return count.of(unsure, behind).counted(thing, size, behind);
  }

  private boolean alsoInAnotherUnit(int from, int to) {
    boolean mark = phrase.is(from, "/") || phrase.is(from, ",") || phrase.is(from, ";");
    @Nullable Measure other = mark ? single(from + 1) : null;
    return other != null && other.unit() != null && other.next() == to;
  }

  private boolean isTimes(int at) {
    return phrase.isWord(at) && phrase.folded(at, at + 1).equals("x");
  }

  /** An amount with its unit and how it is filled. */
  @Nullable Measure single(int from) {
    List<String> manner = new ArrayList<>();
    int circa = tongue.behind("circa", phrase, from);
    boolean about = circa > from && phrase.isNumber(circa); // "c. 240 g", but "c. flour" is a cup
    int at = manners(about ? circa : from, manner);
    Tongue.@Nullable Match couple = tongue.match("couple", phrase, at);
    @Nullable Amount amount =
        couple == null
            ? new AmountReader(tongue, phrase).at(at)
            : Amount.exactly(Double.parseDouble(couple.value()), couple.next(), true, null);
    if (amount == null) {
      return null;
    }
    if (about || couple != null) {
      manner.add("about");
    }
    int more = tongue.behind("more", phrase, amount.next());
    if (more > amount.next()) {
      manner.add("or more"); // "2 or more cups"
    }
    at = manners(afterHyphen(more), manner);
    boolean half = amount.worded() && at > amount.next() && phrase.isWord(at);
    if (half && tongue.knows("part", phrase.folded(at, at + 1))) { // "a scant half cup"
      amount = Objects.requireNonNull(new AmountReader(tongue, phrase).single(at));
      at = amount.next();
    }
    Tongue.@Nullable Match unit = tongue.unit(phrase, at);
    if (unit != null) {
      return new Measure(amount, unit.value(), false, null, manner, unit.next());
    }
    int behindSize = tongue.behind("size", phrase, at);
    Tongue.@Nullable Match large = behindSize > at ? tongue.unit(phrase, behindSize) : null;
    if (large != null) { // "a large teaspoonful"
      manner.add(phrase.text(at, behindSize));
      return new Measure(amount, large.value(), false, null, manner, large.next());
    }
    Tongue.@Nullable Match thing = tongue.container(phrase, behindSize);
    if (thing != null) {
      if (behindSize > at && PACKAGES.contains(thing.value())) {
        manner.add(A_SIZE + phrase.text(at, behindSize)); // "2 large cans"
      }
      return new Measure(amount, thing.value(), true, null, manner, thing.next());
    }
    return new Measure(amount, null, false, null, manner, manner.isEmpty() ? amount.next() : at);
  }

  private int manners(int from, List<String> manner) {
    int at = from;
    for (int words = 0; words < 4; words++) {
      Tongue.@Nullable Match fill = tongue.match("fill", phrase, at);
      Tongue.@Nullable Match about = fill == null ? tongue.match("about", phrase, at) : fill;
      if (about == null) {
        boolean article = words > 0 && at > from && phrase.is(at, ".");
        return article ? at + 1 : at;
      }
      int behind = about.next();
      manner.add(fill == null && !about.value().equals("the") ? aboutWord(about) : about.value());
      manner.removeIf(word -> word.equals("the"));
      // "a heaped teaspoon": the article counts, what follows it tells how
      at = phrase.is(behind, ".") ? behind + 1 : behind;
    }
    return at;
  }

  private static String aboutWord(Tongue.Match about) {
    return about.value().equals("at-least") || about.value().equals("up-to")
        ? about.value().replace('-', ' ')
        : about.value().equals("scant") || about.value().equals("generous")
            ? about.value()
            : "about";
  }

  private int afterHyphen(int at) {
    return phrase.isDash(at) && phrase.touches(at) && phrase.isWord(at + 1) ? at + 1 : at;
  }

  /** "plus 2 tablespoons", "less 1 tablespoon", "1 lb 2 oz", "1 cup to 1 1/4 cups". */
  private Measure summed(Measure first) {
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
    if (sum.unit() == null || sum.container()) {
      return null;
    }
    int at = sum.next();
    Tongue.@Nullable Match plus = tongue.match("plus", phrase, at);
    Tongue.@Nullable Match less = tongue.match("less", phrase, at);
    if (phrase.is(at, "+")) {
      plus = new Tongue.Match("+", at + 1);
    }
    Tongue.@Nullable Match to = phrase.isDash(at) ? new Tongue.Match("-", at + 1) : null;
    if (to == null) {
      to = tongue.match("to", phrase, at);
    }
    int from = plus != null ? plus.next() : less != null ? less.next() : at;
    if (plus == null && less == null && to != null) {
      return range(sum, single(to.next()));
    }
    @Nullable Measure other = single(from);
    if (other != null && other.unit() == null && plus != null && other.high() < 1) {
      return other.amount().worded() // "a cup and a half of"
          ? sum.of(sum.amount().plus(other.low(), other.next()), other.next())
          : null;
    }
    if (other == null || other.unit() == null || other.container()) {
      return null;
    }
    if (plus == null && less == null && !isSmaller(other.unit(), sum.unit())) {
      return null;
    }
    @Nullable Double factor = factor(other.unit(), sum.unit());
    if (factor == null || isRange(sum) || isRange(other)) {
      return null;
    }
    double change = other.low() * factor * (less == null ? 1 : -1);
    Amount total = sum.amount().plus(change, other.next());
    return total.low() < 0 ? null : sum.of(total, other.next());
  }

  /** Both together, if they measure the same. */
  @Nullable Measure together(Measure one, Measure other) {
    @Nullable Double factor =
        one.unit() == null || other.unit() == null ? null : factor(other.unit(), one.unit());
    return factor == null || isRange(one) || isRange(other)
        ? null
        : one.of(one.amount().plus(other.low() * factor, other.next()), other.next());
  }

  private @Nullable Measure range(Measure low, @Nullable Measure high) {
    if (high == null || high.unit() == null || isRange(low) || isRange(high)) {
      return null;
    }
    @Nullable Double factor = factor(high.unit(), String.valueOf(low.unit()));
    return factor == null
        ? null
        : low.of(low.amount().to(high.amount().times(factor)), high.next());
  }

  /** How many of {@code to} one of {@code from} is; null if they do not measure the same. */
  @Nullable Double factor(String from, String to) {
    if (from.equals(to)) {
      return 1.0;
    }
    @Nullable Unit one = unit(from);
    @Nullable Unit other = unit(to);
    return one == null || other == null || one.dimension() != other.dimension()
        ? null
        : one.factor() / other.factor();
  }

  @Nullable Unit unit(String name) {
    if (Units.standard().name(name) == null) {
      return null;
    }
    try {
      return Units.standard().unit(name, measures);
    } catch (tamis.engine.fault.Refusal notInTheseMeasures) {
      return null;
    }
  }

  private boolean isSmaller(String small, String large) {
    @Nullable Double factor = factor(small, large);
    return factor != null && factor < 1;
  }

  private boolean isWeight(String name) {
    @Nullable Unit unit = unit(name);
    return unit != null
        && (unit.dimension() == Dimension.MASS || unit.dimension() == Dimension.VOLUME);
  }

  private static boolean isRange(Measure measure) {
    return measure.amount().isRange();
  }
}
