package tamis.plugin.intake.line;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Measures;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.name.Shares;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Looks at what is left of a line for a second quantity or food, and for names too short. */
record Leftover(Tongue tongue, NameFinder finder, Measures measures, String text) {
  private static final int LONGEST_NAME = 4;
  static final Set<String> WITH = Set.of("with", "mit", "avec", "con", "which");
  private static final Set<String> HALF = Set.of("half", "halb", "moitié", "metà", "mitad");
  private static final Set<String> INTO = Set.of("in", "into", "en", "a", "cut", "other", "and");
  private static final Set<String> SHORT = Set.of("lemon", "lime", "orange", "almond", "almonds");
  private static final Set<String> EGG_SIZES = Set.of("small", "medium", "large", "jumbo");
  private static final Pattern CAN_SIZE =
      Pattern.compile(
          "(?i)(#\\s*\\d|\\bNo\\.?\\s*\\d|\\bnumber\\s+\\w+).{0,8}\\b(can|cans|tin|tins)\\b");
  private static final Pattern SHELL = Pattern.compile("(?i)\\bin (the |their )?shells?\\b");
  private static final Pattern THEIR_WEIGHT =
      Pattern.compile("(?i)\\b(their|its|same|equal) weight\\b");

  void check(Gathered gathered) {
    eggSize(gathered);
    kind(gathered);
    share(gathered);
    new ByUnit(finder).check(gathered);
    if (!gathered.isKnown()) {
      return;
    }
    shortName(gathered);
    new Kept(tongue).check(gathered);
    new CountedPart(tongue, text).check(gathered);
    new OtherPart(tongue).check(gathered);
    gathered.preparations().forEach(said -> measuredAs(said, gathered));
    if (THEIR_WEIGHT.matcher(text).find()) {
      gathered.doubt("`" + text + "` tells a weight by that of another food; write it out");
    }
    if (gathered.isSettled()) {
      for (String said : List.copyOf(gathered.preparations())) {
        check(said, gathered);
      }
    }
  }

  private void measuredAs(String said, Gathered gathered) {
    Phrase phrase = Phrase.of(said, tongue);
    Tongue.@Nullable Match whole = tongue.match("measured", phrase, 0);
    int adverbs = tongue.behind("adverb", phrase, 0);
    Tongue.@Nullable Match how = whole == null ? tongue.match("measured", phrase, adverbs) : whole;
    if (how != null) {
      gathered.measuredAs(how.value());
    }
  }

  /** "Almonds, blanched and cut": a word behind the name that makes another food of it. */
  private void kind(Gathered gathered) {
    for (String said : gathered.preparations()) {
      Tongue.@Nullable Match kind = tongue.match("kind", Phrase.of(said, tongue), 0);
      for (String name : kind == null ? List.<String>of() : turned(kind.value(), gathered)) {
        @Nullable Found found = finder.find(name);
        @Nullable Found plain = gathered.found();
        if (found != null && found.isKnown() && plain != null && !found.equals(plain)) {
          gathered.name(
              gathered.asWritten(), found.alsoAssumed("`" + name + "`, by what is said of it"));
          return;
        }
      }
    }
  }

  /** "Cream 35 % fat": which of several is meant is told by its share. */
  private void share(Gathered gathered) {
    @Nullable Found found = gathered.found();
    for (String said : found == null ? List.<String>of() : gathered.preparations()) {
      Phrase phrase = Phrase.of(said, tongue);
      boolean share = phrase.isNumber(0) && phrase.is(1, "%");
      boolean told = share && tongue.match("shareof", phrase, 2) != null;
      @Nullable String id =
          told && found != null ? Shares.with(found, phrase.get(0).value()) : null;
      if (id != null) {
        gathered.name(gathered.asWritten(), finder.byId(id, null));
        return;
      }
    }
  }

  private static List<String> turned(String kind, Gathered gathered) {
    String name = gathered.asWritten();
    return List.of(kind + " " + name, name + " " + kind);
  }

  /** "2 eggs (medium)", "3 medium-sized eggs". */
  private void eggSize(Gathered gathered) {
    @Nullable Found found = gathered.found();
    if (found == null || !found.isId("egg")) {
      return;
    }
    @Nullable String size = gathered.size();
    String of = size == null ? "" : eggSize(size);
    for (String said : gathered.preparations()) {
      of = of.isEmpty() ? eggSize(said) : of;
    }
    @Nullable Found sized = of.isEmpty() ? null : sizedEgg(of);
    if (sized != null && sized.isKnown()) {
      gathered.name(gathered.asWritten(), sized);
    }
    @Nullable Measure measure = gathered.measure();
    @Nullable Found egg = gathered.found();
    boolean counted = measure != null && measure.unit() == null;
    if (counted && egg != null && egg.isId("egg") && egg.assumed() == null) {
      gathered.name(gathered.asWritten(), egg.alsoAssumed("US large assumed"));
    }
  }

  /** Elsewhere than in America sizes are those of the EU. */
  private @Nullable Found sizedEgg(String size) {
    if (tongue.language().code().equals("en") || size.equals("jumbo")) {
      return finder.find(size + " eggs");
    }
    String letter = size.substring(0, 1);
    return finder.byId(
        "egg-eu-" + letter, "size " + letter.toUpperCase(Locale.ROOT) + " of the EU assumed");
  }

  private static String eggSize(String words) {
    String folded = Phrase.folded(words).replace("-sized", "").replace(" sized", "");
    String plain = folded.equals("med") ? "medium" : folded;
    return EGG_SIZES.contains(plain) ? plain : "";
  }

  private void shortName(Gathered gathered) {
    @Nullable Measure measure = gathered.measure();
    String name = Phrase.folded(gathered.asWritten());
    String unit = measure == null || measure.unit() == null ? "" : measure.unit();
    if (SHORT.contains(name) && Packages.SPOONS.contains(unit)) {
      gathered.doubt("whether juice, zest or extract of `" + name + "` is meant is not said");
    }
    if (name.equals("oats") && tongue.language().code().equals("en")) {
      gathered.name(
          gathered.asWritten(),
          Found.unsure(
              List.of("rolled-oats", "oat-groats"),
              "`oats` may be rolled oats or groats; write which"));
    }
    if (SHELL.matcher(text).find() && !name.contains("egg")) {
      gathered.doubt("`in shell` weighs more than what is used; write a weight without shells");
    }
    if (Phrase.folded(text).contains("lightly packed") && gathered.hasState("packed")) {
      gathered.doubt("lightly packed is neither packed nor loose; write a weight");
    }
    boolean can = unit.equals("can") && measure != null && measure.size() == null;
    boolean weighed = gathered.isAlsoSaid();
    if (!weighed && (can || CAN_SIZE.matcher(text).find())) {
      gathered.doubt("what one can holds is not said; write a weight");
    }
  }

  private void check(String said, Gathered gathered) {
    Phrase phrase = Phrase.of(said, tongue);
    MeasureReader reader = new MeasureReader(tongue, phrase, measures);
    if (phrase.size() == 1 && phrase.isNumber(0) && said.length() == 1) {
      return; // "water 1": which part of it
    }
    if (phrase.isNumber(0)
        && new Equivalents(tongue, phrase, reader).isOnlyMeasures(0, phrase.size(), gathered)) {
      return; // "1 cup butter, 2 sticks": whether it is the same is compared by weight
    }
    boolean ratio = tongue.match("ratio", phrase, 0) != null; // "to each pound of fruit"
    if (ratio || isDitto(phrase)) {
      tell(said, false, gathered);
      return;
    }
    boolean plus = isPlus(phrase, 0);
    boolean or = false;
    boolean with = false;
    for (int i = 0; i < phrase.size(); i++) {
      String word = Phrase.folded(phrase.get(i).text());
      plus |= isPlus(phrase, i) && !word.equals("and") && !word.equals("y") && !word.equals("e");
      or |= tongue.match("or", phrase, i) != null;
      with |= WITH.contains(word);
      boolean joins =
          isPlus(phrase, i) || WITH.contains(word) || tongue.match("or", phrase, i) != null;
      boolean half =
          HALF.contains(word)
              && (i == 0 || !INTO.contains(Phrase.folded(phrase.get(i - 1).text())))
              && !phrase.isDash(i + 1)
              && tongue.match("state", phrase, i + 1) == null
              && i + 1 < phrase.size();
      boolean more = isPlus(phrase, i) && isUnit(reader.at(i + 1)); // "and a spoonful"
      if (half || more || (joins && isFood(phrase, i + 1))) {
        tell(said, (plus || with) && !or && !half, gathered);
        return;
      }
      @Nullable Amount amount = amount(phrase, i);
      if (amount == null) {
        continue;
      }
      if (or && isOtherMeasure(phrase, i, gathered)) {
        return;
      }
      boolean summed = gathered.isSummed() && plus;
      if (!summed && !isInnocent(phrase, i, amount.next(), plus)) {
        tell(said, (plus || with) && !or, gathered);
        return;
      }
      i = amount.next() - 1;
    }
    sameFood(said, gathered);
  }

  /** "Shortening (butter)": another food in brackets. */
  private void sameFood(String said, Gathered gathered) {
    @Nullable Found found = gathered.found();
    @Nullable Found other = finder.find(beforeJoin(said));
    if (found != null
        && other != null
        && other.ingredient() != null
        && !found.isId(other.ingredient().id())
        && !other.ingredient().id().startsWith("egg")) {
      tell(said, false, gathered);
    }
  }

  /** The words up to the first "or" or "and": "butter or both". */
  private String beforeJoin(String said) {
    Phrase phrase = Phrase.of(said, tongue);
    for (int i = 1; i < phrase.size(); i++) {
      boolean joins = tongue.match("or", phrase, i) != null;
      if (joins || tongue.match("and", phrase, i) != null) {
        return phrase.text(0, i);
      }
    }
    return said;
  }

  private static void tell(String said, boolean beside, Gathered gathered) {
    if (beside) {
      gathered.beside(said);
    } else {
      gathered.doubt("`" + said + "` names another amount or food: which is meant is left open");
    }
  }

  /** "1 lb. flour, do. sugar": the same of another food. */
  private boolean isDitto(Phrase phrase) {
    for (int i = 0; i < phrase.size(); i++) {
      if (tongue.match("ditto", phrase, i) != null) {
        return true;
      }
    }
    return false;
  }

  /** Whether an amount in words says what it is an amount of. */
  private static boolean isUnit(@Nullable Measure measure) {
    return measure != null && measure.unit() != null && measure.amount().worded();
  }

  private boolean isPlus(Phrase phrase, int at) {
    return phrase.is(at, "+") || tongue.match("plus", phrase, at) != null;
  }

  private @Nullable Amount amount(Phrase phrase, int at) {
    boolean word = phrase.isWord(at);
    String folded = word ? phrase.folded(at, at + 1) : "";
    boolean number = word && tongue.knows("number", folded) && !folded.equals("one");
    return phrase.isNumber(at) || number ? new AmountReader(tongue, phrase).at(at) : null;
  }

  private boolean isOtherMeasure(Phrase phrase, int at, Gathered gathered) {
    @Nullable Measure other = new MeasureReader(tongue, phrase, measures).at(at);
    boolean ends = other != null && other.unit() != null && other.next() >= phrase.size();
    if (other != null && ends) {
      gathered.also(other);
    }
    return ends;
  }

  private boolean isInnocent(Phrase phrase, int from, int next, boolean plus) {
    int at = phrase.isDash(next) ? next + 1 : next;
    boolean none = phrase.is(at, "°") || phrase.is(at, "%") || phrase.is(at, "\"");
    none |= phrase.is(at, "×") || phrase.is(from - 1, "×");
    if (phrase.isWord(at)) {
      String word = phrase.folded(at, at + 1);
      none |= Innocent.isMeasureOfNoFood(word) || Innocent.isPiece(word);
    }
    boolean before =
        from > 0 && !plus && Innocent.isBefore(Phrase.folded(phrase.get(from - 1).text()));
    return none || before;
  }

  /** Whether a name of a food stands at a place, or behind "a", "a little" or "the" there. */
  private boolean isFood(Phrase phrase, int from) {
    int at = tongue.behind("vague", phrase, from);
    at = tongue.behind("article", phrase, at);
    at = tongue.behind("of", phrase, at);
    for (int to = Math.min(phrase.size(), at + LONGEST_NAME); to > at; to--) {
      if (finder.find(phrase.text(at, to)) != null) {
        return true;
      }
    }
    return false;
  }
}
