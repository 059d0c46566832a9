package tamis.plugin.intake.line;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.PieceMass;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads lines whose quantity stands last: "Sugar, 1 cup", "Burro, grammi 30", "Mehl 500 g". */
record Inverted(Tongue tongue, NameFinder finder, Phrase phrase, MeasureReader measures) {

  /** Reads such a line from a token on; false if it is none, and then nothing was gathered. */
  boolean read(int from, Gathered gathered) {
    for (int i = from + 1; i < phrase.size(); i++) {
      boolean apart = phrase.is(i - 1, ",") || phrase.is(i - 1, ":") || phrase.isDash(i - 1);
      boolean open = phrase.is(i - 1, "(");
      @Nullable Measure first = apart ? measures.unitFirst(i) : null;
      if (first == null && ((!apart && !phrase.isNumber(i)) || open)) {
        continue;
      }
      @Nullable Measure measure = first == null ? measures.at(i) : first;
      boolean share = measure != null && "%".equals(measure.unit()) && phrase.has(measure.next());
      boolean said = measure != null && (measure.unit() != null || apart || isCount(from, measure));
      if (measure != null && said && !share) { // "butter 82 % - 1200 g": the share is of the name
        return read(from, i, measure, gathered);
      }
    }
    return false;
  }

  /** "Eggs 3": a number behind the name of what is counted; "flour 550" is a type. */
  private boolean isCount(int from, Measure measure) {
    int number = measure.amount().next() - 1;
    boolean last = !phrase.has(measure.next()) || phrase.is(measure.next(), ".");
    @Nullable Found named = last ? finder.find(phrase.text(from, number)) : null;
    @Nullable Ingredient ingredient = named == null ? null : named.ingredient();
    return ingredient != null
        && ingredient.pieces().stream().anyMatch(piece -> piece.piece().equals(PieceMass.EACH));
  }

  private boolean read(int from, int amount, Measure measure, Gathered gathered) {
    int nameEnd = amount;
    while (nameEnd > from && !isOfName(nameEnd - 1)) {
      nameEnd--;
    }
    Gathered again = new Gathered(phrase.text());
    int at = new Equivalents(tongue, phrase, measures).read(measure.next(), again);
    int name = Math.min(nameEnd, new Tail(tongue, phrase).nameEnd(from));
    if (!ends(at) || name <= from || !isSaidOfIt(name, nameEnd)) {
      return false;
    }
    gathered.measure(measure);
    new Equivalents(tongue, phrase, measures).read(measure.next(), gathered);
    NameReader names = new NameReader(tongue, finder, phrase);
    int behind = names.read(from, name, gathered);
    Tail tail = new Tail(tongue, phrase);
    if (phrase.is(name, "(")) {
      tail.bracket(name, nameEnd, gathered, measures, finder);
    } else {
      gathered.preparation(phrase.text(behind, nameEnd));
    }
    boolean work = name == nameEnd || phrase.is(name, "(") || names.areStates(name + 1, nameEnd);
    if (!work) {
      gathered.doubt(
          "whether `" + phrase.text(name + 1, nameEnd) + "` is another food is not said");
    }
    tail.read(at, gathered, measures, finder);
    return true;
  }

  /** Whether a token may be the last of a name: a word, a bracket, a share; but not "x 2". */
  private boolean isOfName(int at) {
    boolean times = phrase.isWord(at) && phrase.folded(at, at + 1).equals("x");
    return (phrase.isWord(at) && !times) || phrase.is(at, ")") || phrase.is(at, "%");
  }

  /** Whether the amount is the last that is said, but for a note or for work. */
  private boolean ends(int at) {
    boolean point = phrase.is(at, ".") && at == phrase.size() - 1;
    return !phrase.has(at)
        || phrase.is(at, ",")
        || phrase.is(at, "(")
        || point
        || new NameReader(tongue, finder, phrase).areStates(at, phrase.size());
  }

  /** Whether what stands between name and amount holds no number: "butter, softened, 1 cup". */
  private boolean isSaidOfIt(int from, int to) {
    boolean bracket = phrase.is(from, "(") && phrase.behindParenthesis(from) == to;
    for (int i = from; i < to && !bracket; i++) {
      if (phrase.isNumber(i)) {
        return false;
      }
    }
    return true;
  }
}
