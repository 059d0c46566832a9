package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
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

  private static final double COOLEST = 15; // °C

  /** The whole quantity that begins at a token, or null: with sums and sizes of packages. */
  public @Nullable Measure at(int from) {
    @Nullable Measure first = unsummed(from);
    return first == null ? null : new Sums(this).of(first);
  }

  /** The same without what is added to it. */
  @Nullable Measure unsummed(int from) {
    @Nullable Measure first = new Packages(this).sized(from);
    return first == null ? unitAlone(from) : first;
  }

  /** "Pinch of salt" is one pinch. */
  private @Nullable Measure unitAlone(int from) {
    Tongue.@Nullable Match unit = tongue.unit(phrase, from);
    @Nullable Unit known = unit == null ? null : unit(unit.value());
    if (unit == null) {
      return containerAlone(from);
    }
    if (known == null || unit.next() - from > 2) {
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

  /** "Small glass of brandy": how many is not said. */
  private @Nullable Measure containerAlone(int from) {
    Tongue.@Nullable Match thing = tongue.container(phrase, tongue.behind("size", phrase, from));
    if (thing == null || tongue.match("of", phrase, thing.next()) == null) {
      return null;
    }
    String doubt = "how many, no number stands before `" + phrase.text(from, thing.next()) + "`";
    Amount one = Amount.exactly(1, from, true, doubt);
    return new Measure(one, thing.value(), true, null, List.of(), thing.next());
  }

  /** "Grammi 150", "kg. 2", "N. 3": the unit, or a word that says a count, stands first. */
  @Nullable Measure unitFirst(int from) {
    int start = tongue.behind("about", phrase, from);
    Tongue.@Nullable Match unit = tongue.unit(phrase, start);
    Tongue.@Nullable Match thing = unit == null ? tongue.container(phrase, start) : null;
    Tongue.@Nullable Match of = unit == null ? thing : unit;
    int at = tongue.behind("count", phrase, of == null ? start : of.next());
    at = phrase.is(at, ".") ? at + 1 : at;
    @Nullable Amount amount = at == start ? null : new AmountReader(tongue, phrase).at(at);
    if (amount == null || !phrase.isNumber(at)) {
      return null;
    }
    List<String> manner = start > from ? List.of("about") : List.of();
    @Nullable String name = of == null ? null : of.value();
    return new Measure(amount, name, thing != null, null, manner, amount.next());
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
    boolean filled = amount.worded() && at > amount.next();
    if (filled && phrase.isNumber(at)) { // "a scant 1/3 cup"
      amount = Objects.requireNonNull(new AmountReader(tongue, phrase).at(at));
      at = amount.next();
    }
    boolean half = filled && phrase.isWord(at);
    if (half && tongue.knows("part", phrase.folded(at, at + 1))) { // "a scant half cup"
      amount = Objects.requireNonNull(new AmountReader(tongue, phrase).single(at));
      at = amount.next();
    }
    Tongue.@Nullable Match of = amount.high() < 1 ? tongue.match("of", phrase, at) : null;
    Tongue.@Nullable Match unit = tongue.unit(phrase, of == null ? at : of.next());
    if (unit != null && !isWarmth(amount, unit)) { // "3/4 de litro"
      int behind = tongue.behind("more", phrase, unit.next());
      if (behind > unit.next()) {
        manner.add("or more"); // "a cupful or more of sugar"
      }
      behind = tongue.decimalComma() ? manners(behind, manner) : behind;
      return new Measure(amount, unit.value(), false, null, manner, behind);
    }
    int behindSize = tongue.behind("size", phrase, at);
    Tongue.@Nullable Match large = behindSize > at ? tongue.unit(phrase, behindSize) : null;
    if (large != null) { // "a large teaspoonful"
      manner.add(phrase.text(at, behindSize));
      return new Measure(amount, large.value(), false, null, manner, large.next());
    }
    Tongue.@Nullable Match thing = tongue.container(phrase, behindSize);
    if (thing != null) {
      if (behindSize > at && Packages.isPackage(thing.value())) {
        manner.add(A_SIZE + phrase.text(at, behindSize)); // "2 large cans"
      }
      int behind = tongue.decimalComma() ? manners(thing.next(), manner) : thing.next();
      return new Measure(amount, thing.value(), true, null, manner, behind);
    }
    @Nullable Measure part = partOfUnit(amount, at);
    if (part != null) {
      return part;
    }
    return new Measure(amount, null, false, null, manner, manner.isEmpty() ? amount.next() : at);
  }

  /** "Ein Viertelpfund", "2 Achtelliter": a part and its unit in one word. */
  private @Nullable Measure partOfUnit(Amount amount, int at) {
    String word = phrase.isWord(at) ? phrase.folded(at, at + 1) : "";
    for (String part : tongue.words("glued")) {
      if (word.startsWith(part)) {
        Phrase rest = Phrase.of(word.substring(part.length()), tongue);
        Tongue.@Nullable Match unit = rest.size() == 1 ? tongue.unit(rest, 0) : null;
        double of = Double.parseDouble(String.valueOf(tongue.value("glued", part)));
        return unit == null
            ? null
            : new Measure(amount.times(of), unit.value(), false, null, List.of(), at + 1);
      }
    }
    return null;
  }

  /** "26C" is how warm it is: nobody measures as many cups. */
  private boolean isWarmth(Amount amount, Tongue.Match unit) {
    return amount.low() >= COOLEST && phrase.get(unit.next() - 1).text().equals("C");
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

  int afterHyphen(int at) {
    return phrase.isDash(at) && phrase.touches(at) && phrase.isWord(at + 1) ? at + 1 : at;
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

  boolean isWeight(String name) {
    @Nullable Unit unit = unit(name);
    return unit != null
        && (unit.dimension() == Dimension.MASS || unit.dimension() == Dimension.VOLUME);
  }
}
