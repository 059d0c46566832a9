package tamis.plugin.intake.line;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Units;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.Larder;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Language;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads one line of a list of ingredients. */
public final class LineReader {
  private static final Set<String> BULLETS =
      Set.of(
          "-", "–", "—", "•", "*", "·", "▢", "□", "☐", "☑", "◦", "‣", "●", "○", "+", "~", "✓", "▪");

  private static final int MOST_OF_A_PURPOSE = 5;

  private final Tongue tongue;
  private final NameFinder finder;
  private final Larder larder;
  private final Measures measures;

  public LineReader(Language language, Larder larder, Measures measures) {
    this.tongue = Tongue.of(language);
    this.finder = new NameFinder(larder, language);
    this.larder = larder;
    this.measures = measures;
  }

  public Tongue tongue() {
    return tongue;
  }

  public MeasureReader measures(Phrase phrase) {
    return new MeasureReader(tongue, phrase, measures);
  }

  /** What the line says; nothing of it is dropped. */
  public ReadLine read(String text) {
    Gathered gathered = new Gathered(text);
    read(text, gathered);
    new Leftover(tongue, finder, measures, text).check(gathered);
    return gathered.line();
  }

  private void read(String text, Gathered gathered) {
    Phrase phrase = Phrase.of(text, tongue);
    int from = behindBullet(phrase);
    Tail tail = new Tail(tongue, phrase);
    int behindPart = new PartReader(tongue, finder, larder, phrase).read(from, gathered);
    if (behindPart > from) {
      tail.read(behindPart, gathered, measures(phrase), finder);
      return;
    }
    if (sizedLikeSomething(phrase, from, gathered)) {
      return;
    }
    @Nullable Measure measure = measures(phrase).at(from);
    boolean nameFirst =
        measure != null && measure.amount().next() == from && beginsWithName(phrase, from);
    if (nameFirst && new Inverted(tongue, finder, phrase, measures(phrase)).read(from, gathered)) {
      return;
    }
    int needed = tongue.behind("needed", phrase, from);
    if (measure == null && needed > from && phrase.isWord(needed)) { // "q.b. zucchero"
      gathered.asNeeded();
      named(phrase, tongue.behindOf(phrase, needed), gathered);
      return;
    }
    Tongue.@Nullable Match vague = tongue.match("vague", phrase, from);
    if (vague != null && (measure == null || vague.next() > measure.next())) {
      vaguely(phrase, from, vague, gathered);
    } else if (measure != null) {
      measured(phrase, measure, gathered);
    } else if (!new Inverted(tongue, finder, phrase, measures(phrase)).read(from, gathered)
        && !purposeFirst(phrase, from, gathered)) {
      unmeasured(phrase, from, gathered);
    }
  }

  /** "Gocce di cioccolato 100 g": no drops of chocolate, but a food of that name. */
  private boolean beginsWithName(Phrase phrase, int from) {
    int number = from;
    while (phrase.has(number) && !phrase.isNumber(number)) {
      number++;
    }
    @Nullable Found found = phrase.has(number) ? finder.find(phrase.text(from, number)) : null;
    return found != null && found.isKnown();
  }

  /** The token behind bullets, boxes to tick and numbers of a list. */
  private int behindBullet(Phrase phrase) {
    int at = 0;
    while (phrase.has(at) && BULLETS.contains(phrase.get(at).text())) {
      at++;
    }
    if (phrase.is(at, "[")) {
      int behind = phrase.behindParenthesis(at);
      at = behind > 0 && behind <= at + 3 ? behind : at;
    }
    boolean numbered = phrase.isNumber(at) && (phrase.is(at + 1, ")") || phrase.is(at + 1, "."));
    if (numbered && phrase.touches(at + 1) && phrase.has(at + 2) && !phrase.touches(at + 2)) {
      boolean list = phrase.is(at + 1, ")") || measures(phrase).at(at + 2) != null;
      return list ? at + 2 : at;
    }
    int lead = tongue.behind("lead", phrase, at); // "and two cupfuls of sugar"
    boolean line = lead > at && (measures(phrase).at(lead) != null || isName(phrase, lead));
    return line ? lead : at;
  }

  private boolean sizedLikeSomething(Phrase phrase, int from, Gathered gathered) {
    for (int i = from + 1; i < phrase.size(); i++) {
      if (tongue.match("sizeof", phrase, i) != null) {
        int start = from;
        Tongue.@Nullable Match vague = tongue.match("vague", phrase, from);
        @Nullable Measure measure = measures(phrase).at(from);
        if (vague != null) {
          start = vague.next();
        } else if (measure != null) {
          start = measure.next();
        }
        int end = phrase.is(i - 1, ",") ? i - 1 : i;
        int behind =
            new NameReader(tongue, finder, phrase)
                .read(tongue.behindOf(phrase, start), end, gathered);
        gathered.preparation(phrase.text(behind, phrase.size()));
        String like = phrase.text(i, phrase.size());
        gathered.doubt("`" + like + "` is no measure; write a weight");
        return true;
      }
    }
    return false;
  }

  private void vaguely(Phrase phrase, int from, Tongue.Match vague, Gathered gathered) {
    if (vague.value().equals("as needed")) {
      gathered.asNeeded();
    }
    named(phrase, tongue.behindOf(phrase, vague.next()), gathered);
    if (!gathered.isAsNeeded()) {
      gathered.doubt("`" + phrase.text(from, vague.next()) + "` is no amount; write how much");
    }
  }

  private void measured(Phrase phrase, Measure measure, Gathered gathered) {
    int at = new Equivalents(tongue, phrase, measures(phrase)).read(measure.next(), gathered);
    boolean nothingBehind =
        !phrase.has(at) || phrase.is(at, ",") || phrase.is(at, "(") || phrase.is(at, ".");
    int unitStart = measure.amount().next();
    boolean isName =
        measure.container()
            && measure.size() == null
            && (nothingBehind || (isName(phrase, unitStart) && !isCake(phrase, measure)));
    if (isName) {
      // "3 cloves" is what is counted, not a measure of something
      gathered.measure(
          new Measure(measure.amount(), null, false, null, measure.manner(), unitStart));
      named(phrase, unitStart, gathered);
      return;
    }
    gathered.measure(measure);
    int behindLength = behindLength(phrase, at, gathered);
    named(phrase, tongue.behindOf(phrase, behindNote(phrase, behindLength, gathered)), gathered);
  }

  /** "1 9-inch pie crust": how long or wide it is says nothing of how many. */
  private static int behindLength(Phrase phrase, int at, Gathered gathered) {
    int unit = phrase.isDash(at + 1) ? at + 2 : at + 1;
    boolean length =
        phrase.isNumber(at) && phrase.has(unit) && Innocent.isLength(phrase.folded(unit, unit + 1));
    if (length) {
      gathered.preparation(phrase.text(at, unit + 1));
    }
    return length ? unit + 1 : at;
  }

  /** "2 cups (or more) flour": a note in brackets before the name. */
  private int behindNote(Phrase phrase, int at, Gathered gathered) {
    int behind = phrase.is(at, "(") || phrase.is(at, "[") ? phrase.behindParenthesis(at) : -1;
    boolean name = behind > 0 && phrase.isWord(behind);
    if (name) {
      gathered.preparation(phrase.text(at + 1, behind - 1));
      gathered.loosen(0.1);
    }
    return name ? behind : at;
  }

  /** "1 gousse de vanille": what is counted is part of the name. */
  private boolean isName(Phrase phrase, int from) {
    int end = new Tail(tongue, phrase).nameEnd(from);
    int known = new NameReader(tongue, finder, phrase).knownEnd(from, end);
    @Nullable Found found = finder.find(phrase.text(from, known));
    return found != null && found.isKnown();
  }

  /** "1/2 cake yeast" is half a cake, though cake yeast is a name, too. */
  private boolean isCake(Phrase phrase, Measure measure) {
    @Nullable Found of =
        finder.find(phrase.text(measure.next(), new Tail(tongue, phrase).nameEnd(measure.next())));
    return of != null && of.candidates().contains("yeast-fresh") && ByUnit.isCake(measure);
  }

  private void named(Phrase phrase, int from, Gathered gathered) {
    Tail tail = new Tail(tongue, phrase);
    int end = tail.nameEnd(from);
    NameReader names = new NameReader(tongue, finder, phrase);
    int each = tongue.behind("each", phrase, from);
    if (each > from && names.alternatives(tongue.behindOf(phrase, each), phrase.size(), gathered)) {
      return;
    }
    int behindBracket = phrase.is(end, "(") ? phrase.behindParenthesis(end) : -1;
    if (behindBracket > 0 && names.areStates(from, end)) { // "packed (220 g) brown sugar"
      Equivalents said = new Equivalents(tongue, phrase, measures(phrase));
      if (!said.isOnlyMeasures(end + 1, behindBracket - 1, gathered)) {
        gathered.preparation(phrase.text(end + 1, behindBracket - 1));
      }
      names.states(from, end, gathered);
      named(phrase, behindBracket, gathered);
      return;
    }
    int state = from;
    while (phrase.is(end, ",") && names.areStates(state, end)) { // "toasted, chopped pecans"
      state = end + 1;
      end = tail.nameEnd(state);
    }
    if (end > from + 1 && tongue.match("or", phrase, end - 1) != null) {
      end--;
      gathered.doubt("the line ends with `or`: which is meant is left open");
    }
    if (!tail.inverted(from, end, finder, gathered)) {
      int behind = names.read(from, end, gathered);
      tail.alternatives(end, finder, gathered);
      tail.read(behind, gathered, measures(phrase), finder);
    }
  }

  /** "Egg wash: 1 egg", "For the top: a little sugar": what it is for stands before it. */
  private boolean purposeFirst(Phrase phrase, int from, Gathered gathered) {
    int colon = from;
    while (phrase.has(colon) && !phrase.is(colon, ":") && colon - from <= MOST_OF_A_PURPOSE) {
      colon++;
    }
    boolean said = phrase.is(colon, ":") && colon > from && phrase.has(colon + 1);
    if (!said || finder.find(phrase.text(from, colon)) != null) {
      return false;
    }
    PartReader parts = new PartReader(tongue, finder, larder, phrase);
    int behindPart = parts.read(colon + 1, gathered); // "for the drizzle: juice of 2 lemons"
    @Nullable Measure measure = measures(phrase).at(colon + 1);
    if (behindPart > colon + 1) {
      gathered.preparation(phrase.text(from, colon));
      new Tail(tongue, phrase).read(behindPart, gathered, measures(phrase), finder);
      return true;
    }
    if (measure == null) {
      return false;
    }
    gathered.preparation(phrase.text(from, colon));
    measured(phrase, measure, gathered);
    return true;
  }

  /** "Butter (200 g)": what is said in brackets is all there is; false if nothing is. */
  private boolean weighedInBrackets(Gathered gathered) {
    gathered.measureByAlso(other -> isMass(String.valueOf(other.unit())));
    return gathered.measure() != null;
  }

  private static boolean isMass(String unit) {
    return Units.standard().name(unit) != null
        && Units.standard().dimension(unit) == Dimension.MASS;
  }

  private void unmeasured(Phrase phrase, int from, Gathered gathered) {
    named(phrase, from, gathered);
    if (!gathered.isAsNeeded() && !weighedInBrackets(gathered)) {
      gathered.doubt("no quantity is said; write how much, or \"as needed\"");
    }
  }
}
