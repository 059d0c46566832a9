package tamis.plugin.intake.line;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.name.Shares;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** What stands behind the name of an ingredient: notes in brackets, and behind a comma. */
record Tail(Tongue tongue, Phrase phrase) {
  private static final int MOST_OF_A_KIND = 4;

  /** Where the name ends that begins at a token: at a comma, a bracket, a dash or the end. */
  int nameEnd(int from) {
    for (int i = from; i < phrase.size(); i++) {
      boolean comma = phrase.is(i, ",") || phrase.is(i, ";");
      comma |= phrase.is(i, ":") && !phrase.isRatio(i - 1);
      boolean dash = phrase.isDash(i) && (!phrase.touches(i) || phrase.isDash(i + 1));
      boolean bracket = phrase.is(i, "(") || phrase.is(i, "[");
      boolean plus =
          phrase.is(i, "…")
              || phrase.is(i, "@")
              || phrase.is(i, "+")
              || (tongue.match("plus", phrase, i) != null && phrase.isNumber(i + 1));
      if (comma || dash || bracket || plus) {
        return i;
      }
    }
    return phrase.size();
  }

  /** "Sugar, brown" is brown sugar: the words change places if only then they are a name. */
  boolean inverted(int from, int end, NameFinder finder, Gathered gathered) {
    int stop = nameEnd(end + 1);
    if (!turned(from, end, stop, finder, gathered)) {
      return false;
    }
    gathered.preparation(phrase.text(stop, phrase.size()));
    needed(stop, gathered);
    return true;
  }

  /** The same where what follows the comma ends at {@code stop}; nothing behind it is read. */
  boolean turned(int from, int end, int stop, NameFinder finder, Gathered gathered) {
    if (!phrase.is(end, ",") || !phrase.isWord(end + 1)) {
      return false;
    }
    boolean few = stop - end - 1 <= 2 && end > from;
    boolean state = tongue.match("state", phrase, end + 1) != null;
    boolean adverb = tongue.match("adverb", phrase, end + 1) != null;
    if (!few || state || adverb || tongue.match("tail", phrase, end + 1) != null) {
      return false;
    }
    int noun = from; // "pure chocolate, unsweetened"
    while (tongue.behind("quality", phrase, noun) > noun && noun < end) {
      noun = tongue.behind("quality", phrase, noun);
    }
    if (noun >= end) {
      return false;
    }
    String behind = phrase.text(end + 1, phrase.is(stop - 1, ".") ? stop - 1 : stop);
    @Nullable Found turned = finder.find(behind + " " + phrase.text(noun, end));
    @Nullable Found plain = finder.find(phrase.text(from, end));
    if (turned == null || turned.ingredient() == null) {
      return false;
    }
    boolean same = plain != null && plain.isId(turned.ingredient().id());
    boolean ground = phrase.folded(end + 1, stop).equals("ground");
    if (same || ground) {
      return false;
    }
    gathered.name(phrase.text(from, phrase.is(stop - 1, ".") ? stop - 1 : stop), turned);
    gathered.loosen(0.1);
    return true;
  }

  /** "Butter, margarine or lard": a choice goes on behind the comma. */
  void alternatives(int end, NameFinder finder, Gathered gathered) {
    if (!phrase.is(end, ",") || gathered.found() == null) {
      return;
    }
    int stop = end + 1;
    while (stop < phrase.size()
        && tongue.match("or", phrase, stop) == null
        && !phrase.is(stop, "(")) {
      stop++;
    }
    Tongue.@Nullable Match or = tongue.match("or", phrase, stop);
    if (or == null) {
      others(end, finder, gathered);
      return;
    }
    @Nullable Found first = stop == end + 1 ? null : finder.find(phrase.text(end + 1, stop));
    @Nullable Found last = finder.find(phrase.text(or.next(), nameEnd(or.next())));
    boolean only = last != null && (stop == end + 1 || first != null);
    if (only) {
      gathered.doubt("`" + phrase.text(end + 1, phrase.size()) + "` leaves open which is meant");
    }
  }

  /** "Shortening, butter and lard mixed": other ingredients are named behind the comma. */
  private void others(int end, NameFinder finder, Gathered gathered) {
    int stop = nameEnd(end + 1);
    for (int i = end + 2; i < stop; i++) {
      stop = tongue.match("and", phrase, i) != null ? i : stop;
    }
    boolean state = tongue.match("state", phrase, end + 1) != null;
    boolean named = !state && finder.find(phrase.text(end + 1, stop)) != null;
    if (named) {
      gathered.doubt(
          "`" + phrase.text(end + 1, phrase.size()) + "` names another ingredient than the first");
    }
  }

  /** Gathers all that is left: equivalents in brackets, notes, work to be done. */
  void read(int from, Gathered gathered, MeasureReader measures, NameFinder finder) {
    int at = from;
    int start = from;
    while (at < phrase.size()) {
      boolean open = phrase.is(at, "(") || phrase.is(at, "[");
      int behind = open ? phrase.behindParenthesis(at) : -1;
      if (behind < 0) {
        at++;
        continue;
      }
      gathered.preparation(phrase.text(start, at));
      bracket(at, behind, gathered, measures, finder);
      at = behind;
      start = behind;
    }
    more(start, gathered, measures);
    second(from, gathered, measures, finder);
    partUsed(from, gathered);
    needed(from, gathered);
  }

  /** "1 lemon, juiced": how much of it is used is known only where the part is named. */
  private void partUsed(int from, Gathered gathered) {
    @Nullable Measure measure = gathered.measure();
    boolean whole = measure != null && measure.unit() == null;
    for (int i = from; whole && i < phrase.size(); i++) {
      if (tongue.match("partused", phrase, i) != null) {
        gathered.doubt(
            "`"
                + phrase.text(from, phrase.size())
                + "` uses a part of it; write the part, such as `juice of 1 lemon`");
        return;
      }
    }
  }

  /** "Soda in 2 tablespoons boiling water", "6 eggs + 2 yolks": a second ingredient is told. */
  private void second(int from, Gathered gathered, MeasureReader measures, NameFinder finder) {
    for (int i = from; i < phrase.size(); i++) {
      boolean plus =
          phrase.is(i - 1, "+") || (i > 0 && tongue.match("plus", phrase, i - 1) != null);
      @Nullable Measure measure = phrase.isNumber(i) || plus ? measures.at(i) : null;
      if (measure != null && (measure.unit() != null || plus)) {
        int name = tongue.behind("of", phrase, measure.next());
        if (isName(name, finder)) {
          gathered.beside(phrase.text(i, nameEnd(name)));
          return;
        }
        i = Math.max(i, measure.next() - 1);
      }
    }
  }

  private boolean isName(int from, NameFinder finder) {
    int to = nameEnd(from);
    return to > from
        && (finder.find(phrase.text(from, to)) != null
            || (to > from + 1 && finder.find(phrase.text(from + 1, to)) != null));
  }

  /** The same quantity once more, a closer name, or a note. */
  void bracket(int open, int behind, Gathered gathered, MeasureReader measures, NameFinder finder) {
    Equivalents equivalents = new Equivalents(tongue, phrase, measures);
    if (equivalents.isOnlyMeasures(open + 1, behind - 1, gathered)) {
      return;
    }
    @Nullable Found closer = closer(open + 1, behind - 1, gathered, finder);
    if (closer != null) {
      gathered.name(gathered.asWritten(), closer);
    } else if (phrase.is(behind - 2, "%")) {
      gathered.loosen(0.2);
    }
    gathered.preparation(phrase.text(open + 1, behind - 1));
    if (tongue.match("or", phrase, open + 1) != null) {
      gathered.loosen(0.1);
    }
  }

  /** "Dark chocolate (70 %)", "flour (T55)", "eggs (size M)": a name that the bracket completes. */
  private @Nullable Found closer(int from, int to, Gathered gathered, NameFinder finder) {
    boolean work =
        tongue.match("state", phrase, from) != null
            || tongue.match("temper", phrase, from) != null
            || tongue.match("adverb", phrase, from) != null;
    if (gathered.found() == null || work || to - from > MOST_OF_A_KIND) {
      return null;
    }
    int kind = tongue.behind("kindmark", phrase, from);
    kind = kind > from && phrase.is(kind, ".") ? kind + 1 : kind;
    boolean share = to - 2 > kind && phrase.is(to - 2, "%"); // "35% fat"
    String inside = phrase.text(kind, share ? to - 1 : to);
    String name = gathered.asWritten();
    for (String words :
        List.of(name + " (" + inside + ")", name + " " + inside, inside + " " + name)) {
      @Nullable Found found = finder.find(words.replace(" %", "%"));
      if (found != null && found.isKnown()) {
        return found;
      }
    }
    return byShare(from, to, gathered.found(), finder);
  }

  /** "Dark chocolate (80 % cacao)", "cream (35% fat)". */
  private @Nullable Found byShare(int from, int to, Found food, NameFinder finder) {
    for (int i = from; i + 1 < to; i++) {
      boolean share = phrase.isNumber(i) && phrase.is(i + 1, "%");
      @Nullable String id = share ? Shares.with(food, phrase.get(i).value()) : null;
      if (id != null) {
        return finder.byId(id, null);
      }
    }
    return null;
  }

  /** "+ 1 tbsp for the tin": more of it is wanted elsewhere, and is told as a note. */
  private void more(int start, Gathered gathered, MeasureReader measures) {
    gathered.preparation(phrase.text(start, phrase.size()));
    for (int i = start; i < phrase.size(); i++) {
      boolean plus = phrase.is(i, "+") || tongue.match("plus", phrase, i) != null;
      @Nullable Measure extra = plus ? measures.at(i + 1) : null;
      if (extra != null && extra.unit() != null) {
        more(extra, gathered, measures);
        return;
      }
    }
  }

  private void more(Measure extra, Gathered gathered, MeasureReader measures) {
    @Nullable Measure first = gathered.measure();
    boolean divided =
        phrase.is(extra.next(), ",")
            && phrase.folded(extra.next() + 1, phrase.size()).matches("divided\\.?");
    boolean purpose = !divided && extra.next() < phrase.size() && !phrase.is(extra.next(), ".");
    @Nullable Measure sum =
        first == null || purpose ? null : new Sums(measures).together(first, extra);
    if (sum != null) {
      gathered.measure(sum);
      gathered.summed();
      gathered.forgetAlso(); // what was said once more was said of the first part
    }
    gathered.loosen(sum == null ? 0.2 : 0.05);
  }

  private void needed(int from, Gathered gathered) {
    if (gathered.measure() != null) {
      return;
    }
    for (int i = Math.max(0, from - 8); i < phrase.size(); i++) {
      if (tongue.match("needed", phrase, i) != null) {
        gathered.asNeeded();
        return;
      }
    }
  }
}
