package tamis.plugin.intake.line;

import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Token;
import tamis.plugin.intake.word.Tongue;

/** Reads numbers in figures and words: {@code 1 1/2}, {@code one and one-half}, {@code 2 to 3}. */
public record AmountReader(Tongue tongue, Phrase phrase) {
  private static final String NUMBER = "number";
  private static final String ARTICLE = "article";
  private static final String PART = "part";

  /** The number or range that begins at a token, or null. */
  public @Nullable Amount at(int from) {
    int between = tongue.behind("between", phrase, from);
    if (between > from) {
      return between(between);
    }
    @Nullable Amount low = single(from);
    if (low == null) {
      return null;
    }
    @Nullable Amount high = rangeEnd(low.next());
    return high == null ? low : low.to(high);
  }

  /** "Between 2 and 3". */
  private @Nullable Amount between(int from) {
    @Nullable Amount low = single(from);
    int and = low == null ? from : tongue.behind("and", phrase, low.next());
    @Nullable Amount high = low == null || and == low.next() ? null : single(and);
    return low == null || high == null ? null : low.to(high);
  }

  /** The upper end of a range that goes on at a token, or null. */
  private @Nullable Amount rangeEnd(int from) {
    int at = from;
    if (phrase.isDash(from)) {
      at = from + 1;
    } else {
      Tongue.@Nullable Match to = tongue.match("to", phrase, from);
      if (to == null) {
        return null;
      }
      at = to.next();
    }
    boolean word = phrase.isWord(at) && !tongue.knows(NUMBER, phrase.folded(at, at + 1));
    return word && partWord(at + 1) == null ? null : single(at);
  }

  /** One number, without what would make a range of it. */
  public @Nullable Amount single(int from) {
    @Nullable Amount misread = misread(from);
    if (misread != null) {
      return misread;
    }
    if (phrase.isNumber(from)) {
      Token number = phrase.get(from);
      if (number.value() < 1 && number.value() > 0) { // "½ a lb.", "¾ of a pint"
        Amount part = part(number.value(), from + 1);
        boolean article = phrase.isWord(part.next() - 1) && part.next() > from + 1;
        boolean counts =
            article && tongue.knows(ARTICLE, phrase.folded(part.next() - 1, part.next()));
        return Amount.exactly(
            number.value(), counts ? part.next() : from + 1, false, number.doubt());
      }
      return more(Amount.exactly(number.value(), from + 1, false, number.doubt()));
    }
    if (!phrase.isWord(from)) {
      return null;
    }
    String word = phrase.folded(from, from + 1);
    @Nullable String part = tongue.value(PART, word);
    if (part != null) {
      return part(Double.parseDouble(part), from + 1);
    }
    @Nullable String number = tongue.value(NUMBER, word);
    if (number != null) {
      return more(tens(Double.parseDouble(number), from + 1));
    }
    @Nullable String article = tongue.value(ARTICLE, word);
    if (article == null) {
      return null;
    }
    @Nullable String half = partWord(from + 1);
    return half == null
        ? Amount.exactly(1, from + 1, true, null)
        : part(Double.parseDouble(half), behindPart(from + 1));
  }

  /**
   * "I 1/2", "l/2": a scanned 1 that was taken for a letter; told, for it may be something else.
   */
  private @Nullable Amount misread(int from) {
    boolean letter = from == 0 && (isLetter("I") || isLetter("l"));
    boolean over = letter && phrase.is(1, "/") && phrase.touches(1) && phrase.touches(2);
    int number = over ? 2 : 1;
    if (!letter || !phrase.isNumber(number) || phrase.get(number).value() <= 0) {
      return null;
    }
    double value = phrase.get(number).value();
    String doubt = "`" + phrase.get(0).text() + "` may be the figure 1";
    if (over) {
      return Amount.exactly(1 / value, number + 1, false, doubt);
    }
    return value < 1 ? Amount.exactly(1 + value, number + 1, false, doubt) : null;
  }

  private boolean isLetter(String letter) {
    return phrase.isWord(0) && phrase.get(0).text().equals(letter);
  }

  /** Twenty-four, "setenta y cinco", "ciento veinte". */
  private Amount tens(double value, int next) {
    boolean hyphen = phrase.isDash(next) && phrase.isWord(next + 1);
    boolean spanish = tongue.language().code().equals("es") && value < 100;
    int and = spanish ? tongue.behind("and", phrase, next) : next;
    int at = hyphen ? next + 1 : and;
    double most = value >= 100 ? 100 : 10;
    boolean joined = hyphen || and > next || value >= 100;
    @Nullable String word =
        value >= 20 && joined && phrase.isWord(at)
            ? tongue.value(NUMBER, phrase.folded(at, at + 1))
            : null;
    double more = word == null ? most : Double.parseDouble(word);
    if (more >= most || value % most != 0) {
      return Amount.exactly(value, next, true, null);
    }
    Amount rest = tens(more, at + 1);
    return Amount.exactly(value + rest.low(), rest.next(), true, null);
  }

  /** "Half" may be followed by "a", "of a", "of the". */
  private Amount part(double value, int next) {
    int at = next;
    Tongue.@Nullable Match of = tongue.match("of", phrase, at);
    if (of != null) {
      at = of.next();
    }
    if (phrase.isWord(at) && tongue.knows(ARTICLE, phrase.folded(at, at + 1))) {
      at++;
    } else if (of != null && !phrase.is(next, "'")) {
      return Amount.exactly(value, of.next(), true, null);
    }
    return Amount.exactly(value, at, true, null);
  }

  /** What is added to a whole number, or multiplies it: "and a half", "-quarters". */
  private Amount more(Amount whole) {
    @Nullable String parts = whole.low() == Math.rint(whole.low()) ? partWord(whole.next()) : null;
    if (parts != null) {
      int behind = behindPart(whole.next());
      return part(whole.low() * Double.parseDouble(parts), behind);
    }
    Tongue.@Nullable Match and = tongue.match("and", phrase, whole.next());
    if (and == null) {
      return whole;
    }
    int at = and.next();
    if (phrase.isNumber(at) && phrase.get(at).value() < 1 && phrase.get(at).value() > 0) {
      return whole.plus(phrase.get(at).value(), at + 1);
    }
    double times = 1;
    if (phrase.isWord(at)) {
      String word = phrase.folded(at, at + 1);
      @Nullable String count = tongue.value(NUMBER, word);
      if (count == null) {
        count = tongue.value(ARTICLE, word);
      }
      if (count != null) {
        times = Double.parseDouble(count);
        at++;
      }
    }
    @Nullable String fraction = partWord(at);
    return fraction == null
        ? whole
        : whole.plus(times * Double.parseDouble(fraction), behindPart(at));
  }

  /** What a part word at a place stands for, a hyphen before it or not. */
  private @Nullable String partWord(int from) {
    int at = phrase.isDash(from) && phrase.touches(from) ? from + 1 : from;
    return phrase.isWord(at) ? tongue.value(PART, phrase.folded(at, at + 1)) : null;
  }

  private int behindPart(int from) {
    return phrase.isDash(from) ? from + 2 : from + 1;
  }
}
