package tamis.plugin.intake.line;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.PieceMass;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads lines whose quantity stands last: "Sugar, 1 cup", "Burro, grammi 30", "Mehl 500 g". */
record Inverted(Tongue tongue, NameFinder finder, Phrase phrase, MeasureReader measures) {
  /** Of wheat, spelt and rye flour in Germany, Austria and Switzerland. */
  private static final Set<String> TYPES =
      Set.of(
          "405", "480", "550", "630", "700", "720", "812", "815", "960", "997", "1050", "1150",
          "1370", "1590", "1600", "1700", "1740", "1800");

  /** More than that, "c" is not of cups but of degrees. */
  private static final int MOST_CUPS = 12;

  /** Reads such a line from a token on; false if it is none, and then nothing was gathered. */
  boolean read(int from, Gathered gathered) {
    for (int i = from + 1; i < phrase.size(); i++) {
      int behindBracket = phrase.is(i, "(") ? phrase.behindParenthesis(i) : -1;
      @Nullable Measure measure = behindBracket > 0 ? null : measure(from, i);
      if (measure != null && read(from, i, measure, gathered)) {
        return true;
      }
      i = Math.max(i, behindBracket - 1);
    }
    return false;
  }

  /** The measure at a token, if it can be that of what stands before it. */
  private @Nullable Measure measure(int from, int at) {
    boolean times = phrase.isTimes(at - 1);
    boolean apart = phrase.is(at - 1, ",") || phrase.is(at - 1, ":") || phrase.isDash(at - 1);
    boolean counts = tongue.match("count", phrase, at) != null; // "uova n. 3"
    boolean unit = tongue.decimalComma() && phrase.isWord(at) && isName(from, at); // "farina g 500"
    @Nullable Measure first = apart || counts || unit ? measures.unitFirst(at) : null;
    if (first != null) {
      return first;
    }
    boolean worded = phrase.isWord(at) && tongue.knows("number", phrase.folded(at, at + 1));
    @Nullable Measure measure = apart || worded || phrase.isNumber(at) ? measures.at(at) : null;
    if (worded && !apart && measure != null && measure.unit() == null) {
      return null;
    }
    if (measure != null && phrase.isWord(measure.next())) {
      measure = measures.unsummed(at); // "mascarpone 500 g + 250 g cream"
    }
    if (measure == null || phrase.isRatio(at) || phrase.is(at - 1, "@")) { // "water @ 26 C"
      return null;
    }
    if (measure.high() == 0 && phrase.isNumber(measure.next())) { // "farina 00 g 500"
      return null;
    }
    if ("cup".equals(measure.unit()) && measure.low() > MOST_CUPS && isLetter(measure.next() - 1)) {
      return null; // "water 38 c"
    }
    if ("%".equals(measure.unit())) { // "butter 82 % - 1200 g": the share is of the name
      boolean note = phrase.is(measure.next(), "(") && !isName(from, measure.next());
      return note || !phrase.has(measure.next()) ? measure : null;
    }
    boolean said = measure.unit() != null || times || isCount(from, measure);
    @Nullable Measure bare = said ? null : bare(from, at, measure);
    return bare == null && (said || apart) ? measure : bare;
  }

  private boolean isLetter(int at) {
    return phrase.isWord(at) && phrase.get(at).text().length() == 1;
  }

  private boolean isName(int from, int to) {
    boolean part = phrase.isNumber(to - 1) && phrase.get(to - 1).text().length() == 1;
    String name = phrase.text(from, to).replace(" %", "%");
    int known = new NameReader(tongue, finder, phrase).knownEnd(from, to);
    return finder.find(name) != null
        || (known < to && known > from)
        || (part && to - 1 > from && finder.find(phrase.text(from, to - 1)) != null); // "water 1"
  }

  /** "Sugar 175", "salt 20 2.0 %": columns of a bench sheet, whose head says the unit. */
  private @Nullable Measure bare(int from, int at, Measure measure) {
    int behind = nameEnd(from, beforeShare(from, nameEnd(from, at)));
    int end = Math.min(behind, new Tail(tongue, phrase).nameEnd(from));
    if (phrase.touches(at) || end <= from || !isName(from, end)) {
      return null;
    }
    @Nullable Found named = finder.find(phrase.text(from, end));
    @Nullable Ingredient ingredient = named == null ? null : named.ingredient();
    if (finder.find(phrase.text(from, at + 1)) != null) {
      return null;
    }
    if (ingredient != null && ingredient.isFlour() && TYPES.contains(phrase.get(at).text())) {
      return null; // "flour 550" is a type
    }
    if (!areColumns(measure.next())) {
      return null;
    }
    String doubt = "no unit stands behind `" + phrase.text(at, measure.next()) + "`";
    Amount amount = measure.amount();
    return measure.of(
        new Amount(amount.low(), amount.high(), amount.next(), false, doubt), measure.next());
  }

  /** Whether only numbers and shares follow. */
  private boolean areColumns(int from) {
    for (int i = from; i < phrase.size(); i++) {
      if (!phrase.isNumber(i) && !phrase.is(i, "%") && !phrase.is(i, ".")) {
        return false;
      }
    }
    return true;
  }

  /** "Eggs 3": a number behind the name of what is counted; "flour 550" is a type. */
  private boolean isCount(int from, Measure measure) {
    int number = measure.amount().next() - 1;
    boolean last =
        !phrase.has(measure.next())
            || phrase.is(measure.next(), ".")
            || phrase.is(measure.next(), "(");
    last |= tongue.match("tail", phrase, measure.next()) != null;
    int name = Math.min(number, new Tail(tongue, phrase).nameEnd(from));
    @Nullable Found named = last ? finder.find(phrase.text(from, name)) : null;
    @Nullable Ingredient ingredient = named == null ? null : named.ingredient();
    return ingredient != null
        && ingredient.pieces().stream().anyMatch(piece -> piece.piece().equals(PieceMass.EACH));
  }

  /** Where the name ends before an amount: before signs, "x" and "about". */
  private int nameEnd(int from, int amount) {
    int end = amount;
    while (end > from
        && (!isOfName(end - 1) || tongue.knows("about", phrase.folded(end - 1, end)))) {
      end--;
    }
    return end;
  }

  /** "Rye flour 30 % 3 kg": the share that stands before the amount is none of the name. */
  private int beforeShare(int from, int end) {
    boolean share = phrase.is(end - 1, "%") && phrase.isNumber(end - 2) && end - 2 > from;
    int name = Math.min(nameEnd(from, end - 2), new Tail(tongue, phrase).nameEnd(from));
    boolean apart = share && !isName(from, end) && name > from && isName(from, name);
    return apart ? end - 2 : end;
  }

  private boolean read(int from, int amount, Measure measure, Gathered gathered) {
    int share = nameEnd(from, amount);
    int nameEnd = nameEnd(from, beforeShare(from, share));
    Gathered again = new Gathered(phrase.text());
    int at = new Equivalents(tongue, phrase, measures).read(measure.next(), again);
    int name = Math.min(nameEnd, new Tail(tongue, phrase).nameEnd(from));
    boolean sure = measure.unit() != null && name > from && isName(from, name);
    if (!(ends(at) || sure) || name <= from || !isSaidOfIt(name, nameEnd)) {
      return false;
    }
    gathered.measure(measure);
    gathered.preparation(phrase.text(nameEnd, share));
    new Equivalents(tongue, phrase, measures).read(measure.next(), gathered);
    NameReader names = new NameReader(tongue, finder, phrase);
    Tail tail = new Tail(tongue, phrase);
    int kind = phrase.is(name, ",") ? Math.min(tail.nameEnd(name + 1), nameEnd) : name;
    boolean turned = tail.turned(from, name, kind, finder, gathered); // "flour, bread: 2 kg"
    int behind = turned ? kind : names.read(from, name, gathered);
    if (behind < amount && mayGroup(amount - 1)) {
      String both = phrase.text(amount - 1, amount + 1);
      gathered.doubt("whether `" + both + "` is one number is not said");
    }
    if (phrase.is(name, "(")) {
      gathered.preparation(phrase.text(behind, name));
      tail.bracket(name, nameEnd, gathered, measures, finder);
    } else {
      gathered.preparation(phrase.text(behind, nameEnd));
    }
    boolean told = turned || isSame(from, name, kind, gathered); // "milk, whole: 2 l"
    int rest = told ? kind : name;
    if (rest < nameEnd && !phrase.is(rest, "(") && !isWork(rest + 1, nameEnd)) {
      gathered.doubt(
          "whether `" + phrase.text(rest + 1, nameEnd) + "` is another food is not said");
    }
    tail.read(at, gathered, measures, finder);
    return true;
  }

  /** "Flour 2 500 g": the second part of a thing, or thousands parted by a space. */
  private boolean mayGroup(int at) {
    String more = phrase.isNumber(at + 1) ? phrase.get(at + 1).text() : "";
    String first = phrase.isNumber(at) ? phrase.get(at).text() : "";
    return first.matches("[1-9]\\d?") && more.matches("\\d{3}");
  }

  /** Whether the words behind the comma say what is taken for granted without them. */
  private boolean isSame(int from, int name, int kind, Gathered gathered) {
    @Nullable Found plain = gathered.found();
    @Nullable Found whole =
        kind <= name + 1
            ? null
            : finder.find(phrase.text(name + 1, kind) + " " + phrase.text(from, name));
    @Nullable Ingredient same = whole == null ? null : whole.ingredient();
    return same != null && plain != null && plain.isId(same.id());
  }

  /** Whether only work is said, in one or more pieces parted by commas. */
  private boolean isWork(int from, int to) {
    NameReader names = new NameReader(tongue, finder, phrase);
    int end = Math.min(new Tail(tongue, phrase).nameEnd(from), to);
    return names.isWork(from, end) && (end == to || isWork(end + 1, to));
  }

  /** Whether a token may be the last of a name: a word, a bracket, a share; but not "x 2". */
  private boolean isOfName(int at) {
    return (phrase.isWord(at) && !phrase.isTimes(at))
        || phrase.isNumber(at)
        || phrase.is(at, ")")
        || phrase.is(at, "%");
  }

  /** Whether the amount is the last that is said, but for a note, a share or work. */
  private boolean ends(int at) {
    return areColumns(at)
        || phrase.is(at, ",")
        || phrase.is(at, "(")
        || phrase.is(at, "+")
        || tongue.match("tail", phrase, at) != null
        || tongue.match("size", phrase, at) != null
        || new NameReader(tongue, finder, phrase).areStates(at, phrase.size());
  }

  /** Whether what stands between name and amount holds no number: "butter, softened, 1 cup". */
  private boolean isSaidOfIt(int from, int to) {
    boolean bracket = phrase.is(from, "(") && phrase.behindParenthesis(from) == to;
    bracket |= phrase.is(from, "@");
    for (int i = from; i < to && !bracket; i++) {
      int behind = phrase.is(i, "(") ? phrase.behindParenthesis(i) : -1;
      i = behind > 0 ? behind - 1 : i;
      if (phrase.isNumber(i) && !phrase.is(i + 1, "%")) {
        return false;
      }
    }
    return true;
  }
}
