package tamis.plugin.intake.page;

import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.Amount;
import tamis.plugin.intake.line.AmountReader;
import tamis.plugin.intake.line.Innocent;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.line.Measure;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Token;
import tamis.plugin.intake.word.Tongue;

/**
 * A line of a page, and what its form tells: whether it is prose, a direction, a line of
 * ingredients. What stands around it is not looked at.
 */
final class PageLine {
  /** A line of ingredients is not longer. */
  static final int WORDS_OF_A_LINE = 30;

  /** One without an amount, or one that nothing is known of. */
  static final int WORDS_OF_A_BARE_LINE = 8;

  /** One that stands among steps or notes. */
  static final int WORDS_OF_A_LATE_LINE = 12;

  private static final int WORDS_OF_A_SENTENCE = 14;

  private final SourceLine source;
  private final LineReader lines;
  private final Tongue tongue;
  private final Phrase phrase;
  private final int words;
  private @Nullable ReadLine read;

  PageLine(SourceLine source, LineReader lines) {
    this.source = source;
    this.lines = lines;
    this.tongue = lines.tongue();
    this.phrase = Phrase.of(source.text(), tongue);
    this.words = words(source.text());
  }

  SourceLine source() {
    return source;
  }

  String text() {
    return source.text();
  }

  Phrase phrase() {
    return phrase;
  }

  int words() {
    return words;
  }

  private static int words(String text) {
    int words = 0;
    boolean inside = false;
    for (int i = 0; i < text.length(); i++) {
      boolean space = Phrase.isSpace(text.charAt(i));
      words += !space && !inside ? 1 : 0;
      inside = !space;
    }
    return words;
  }

  /** What it says as a line of ingredients. */
  ReadLine read() {
    ReadLine known = read == null ? lines.read(text()) : read;
    read = known;
    return known;
  }

  /** Whether words of the kind begin it. */
  boolean begins(String kind) {
    return tongue.match(kind, phrase, 0) != null;
  }

  boolean ends() {
    return text().endsWith(".") || text().endsWith("!") || text().endsWith("?");
  }

  /** Sentences: a point with a capital behind it, or a long line that ends with a point. */
  boolean isProse() {
    String text = text();
    for (int i = 1; i + 2 < text.length(); i++) {
      boolean stop = text.charAt(i) == '.' || text.charAt(i) == '!' || text.charAt(i) == '?';
      boolean letter = Character.isLetter(text.charAt(i - 1)) && i > 3;
      if (stop
          && letter
          && text.charAt(i + 1) == ' '
          && Character.isUpperCase(text.charAt(i + 2))) {
        int start = text.lastIndexOf(' ', i) + 1;
        if (i - start > 3 && words(text.substring(0, i)) > 3) {
          return true;
        }
      }
    }
    return words > WORDS_OF_A_LINE || (words > WORDS_OF_A_SENTENCE && text.endsWith("."));
  }

  /** A line in brackets, or one that calls itself a note. */
  boolean isAside() {
    boolean bracketed = phrase.is(0, "(") && phrase.behindParenthesis(0) >= phrase.size() - 1;
    Tongue.@Nullable Match note = tongue.match("notes", phrase, 0);
    return bracketed || (note != null && phrase.is(note.next(), ":"));
  }

  /** It begins with a word of work: "Butter the pan", but not "butter, 100 g" or "Butter 2 oz". */
  boolean isDirection() {
    boolean listed =
        phrase.is(1, ",") || phrase.is(1, "(") || phrase.is(1, ":") || phrase.size() == 1;
    return phrase.isWord(0) && !listed && begins("verb") && !isWeighedFood();
  }

  private boolean isWeighedFood() {
    return read().hasUnit() && read().isIngredientKnown();
  }

  /** "1. Mix." */
  boolean isNumbered() {
    return phrase.isNumber(0) && (phrase.is(1, ".") || phrase.is(1, ")"));
  }

  /** Whether it is one of ingredients: it begins with an amount, or says that none is meant. */
  boolean isPlain() {
    ReadLine read = read();
    if (read.isMeasured()) {
      return read.isIngredientNamed()
          || (!isDirection() && (read.hasUnit() || words <= WORDS_OF_A_BARE_LINE));
    }
    boolean vague = isVague() && (read.isIngredientNamed() || holdsNumber());
    boolean named = read.isIngredientNamed() && (read.measure() != null || read.asNeeded());
    return named || vague;
  }

  private boolean holdsNumber() {
    return phrase.tokens().stream().anyMatch(Token::isNumber);
  }

  /** "A little milk", "juice of …", "butter the size of an egg". */
  private boolean isVague() {
    for (int i = 0; i < Math.min(3, phrase.size()); i++) {
      boolean part = tongue.match("partof", phrase, i) != null;
      if (part || tongue.match("vague", phrase, i) != null) {
        return true;
      }
    }
    for (int i = 0; i < phrase.size(); i++) {
      if (tongue.match("sizeof", phrase, i) != null) {
        return true;
      }
    }
    return false;
  }

  /**
   * Whether a short line begins with an amount, or names a food or a part of one, or holds an
   * amount with a unit, and says no work: then it is no step, understood or not.
   *
   * @param goesOn whether it only ends the sentence of the line before
   */
  boolean hasFormOfIngredient(boolean goesOn) {
    ReadLine read = read();
    if (isDirection() || isNumbered() || words > WORDS_OF_A_LINE) {
      return false;
    }
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(0);
    boolean article = amount != null && !phrase.isNumber(0) && amount.low() == 1;
    if (amount != null && (!article || read.hasUnit())) {
      boolean sentence = ends() && words > WORDS_OF_A_BARE_LINE;
      boolean few = words <= WORDS_OF_A_LATE_LINE || (read.isIngredientKnown() && read.hasUnit());
      return few && !sentence && !isOtherThanFood(amount.next());
    }
    if (ends() || words > WORDS_OF_A_LATE_LINE || goesOn) {
      return false;
    }
    boolean named = read.isIngredientNamed() && words <= WORDS_OF_A_BARE_LINE;
    return named || isVague() || measures() > 0;
  }

  /** "20 minutes at 180 °C": a time, a warmth or a length. */
  private boolean isOtherThanFood(int at) {
    int unit = phrase.isDash(at) ? at + 1 : at;
    return phrase.is(unit, "°")
        || phrase.is(unit, "%")
        || (phrase.has(unit) && Innocent.isMeasureOfNoFood(Phrase.folded(phrase.get(unit).text())));
  }

  /** "2 cups of flour, sifted twice. Have it warm." */
  boolean beginsWithMeasure() {
    return phrase.isNumber(0) && read().hasUnit() && words <= WORDS_OF_A_LINE;
  }

  /** How many amounts in figures, with a unit, it holds. */
  int measures() {
    int measures = 0;
    for (int i = 0; i < phrase.size(); i++) {
      @Nullable Measure measure = phrase.isNumber(i) ? lines.measures(phrase).at(i) : null;
      measures += measure != null && measure.unit() != null && !measure.container() ? 1 : 0;
    }
    return measures;
  }
}
