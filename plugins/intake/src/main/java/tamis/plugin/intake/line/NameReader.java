package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.PieceMass;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Finds which of the words of a line name the ingredient, and what the others say of it. */
final class NameReader {
  /** Beasts and trades whose name tells one food from another: goat's milk is not cow's. */
  private static final Set<String> NO_MAKERS =
      Set.of(
          "goat",
          "sheep",
          "ewe",
          "mare",
          "cow",
          "buffalo",
          "camel",
          "calf",
          "pig",
          "lamb",
          "duck",
          "goose",
          "quail",
          "baker",
          "brewer",
          "confectioner",
          "cook",
          "lady",
          "shepherd",
          "farmer");

  private static final int MOST_WORDS_OF_WORK = 8;
  private static final List<String> WORK = List.of("state", "adverb", "temper", "quality", "and");

  private final Tongue tongue;
  private final NameFinder finder;
  private final Phrase phrase;

  NameReader(Tongue tongue, NameFinder finder, Phrase phrase) {
    this.tongue = tongue;
    this.finder = finder;
    this.phrase = phrase;
  }

  /**
   * A name with what was taken off at its ends.
   *
   * @param from first token of the name
   * @param to behind its last token
   */
  private record Stripped(
      int from, int to, Found found, List<ReadLine.State> states, @Nullable String size, int odd) {}

  /**
   * Reads the name that stands from one token up to another into what is gathered; tells the token
   * behind the name, where what is said of it begins.
   */
  int read(int from, int to, Gathered gathered) {
    int end = to;
    while (end > from && phrase.is(end - 1, ".")) {
      end--;
    }
    if (from >= end) {
      gathered.doubt("no ingredient is named");
      return from;
    }
    @Nullable Stripped stripped = null;
    for (int stop : ends(from, end)) {
      stripped = stripped == null ? front(from, stop) : stripped;
    }
    if (stripped == null) {
      return turned(from, end, gathered) ? end : unknown(from, end, gathered);
    }
    gathered.name(phrase.text(stripped.from(), stripped.to()), stripped.found());
    stripped.states().forEach(gathered::state);
    if (stripped.size() != null) {
      gathered.size(stripped.size());
    }
    gathered.loosen(0.05 * stripped.odd());
    return behindStates(stripped.to(), end, gathered);
  }

  /** "Butter unsalted", "butter 82 %": the last words belong before the name. */
  private boolean turned(int from, int end, Gathered gathered) {
    int last = phrase.is(end - 1, "%") ? end - 2 : end - 1;
    boolean kind = last > from && !isState(last) && tongue.match("temper", phrase, last) == null;
    String first = kind ? phrase.text(last, end).replace(" %", "%") : "";
    @Nullable Found found = kind ? finder.find(first + " " + phrase.text(from, last)) : null;
    if (found == null || !found.isKnown()) {
      return false;
    }
    gathered.name(phrase.text(from, end), found);
    gathered.loosen(0.1);
    return true;
  }

  /** Where adjectives follow the noun, a state right behind it was there when it was measured. */
  private int behindStates(int from, int end, Gathered gathered) {
    int at = from;
    while (tongue.decimalComma() && !tongue.language().code().equals("de") && at < end) {
      Tongue.@Nullable Match state = tongue.match("state", phrase, at);
      Tongue.@Nullable Match size = tongue.match("size", phrase, at);
      if (size != null) {
        gathered.size(size.value());
        at = size.next();
      } else if (state != null) {
        gathered.state(new ReadLine.State(phrase.text(at, state.next()), state.value(), false));
        at = state.next();
      } else {
        return at;
      }
    }
    return at;
  }

  /** Where the name may end: at the end, before "for …" or "at …", before states behind it. */
  private List<Integer> ends(int from, int to) {
    List<Integer> ends = new ArrayList<>(List.of(to));
    for (int i = from + 1; i < to; i++) {
      if (tongue.match("tail", phrase, i) != null || tongue.match("needed", phrase, i) != null) {
        ends.add(i);
        break;
      }
    }
    int last = ends.get(ends.size() - 1);
    for (int i = last - 1; i > from && i >= last - MOST_WORDS_OF_WORK; i--) {
      if (isWork(i, last)) {
        ends.add(i);
      }
    }
    return ends;
  }

  /** Whether nothing but what was done to a food is said: "melted and cooled", "a pezzetti". */
  private boolean isWork(int from, int to) {
    int at = from;
    while (at < to) {
      int next = phrase.isWord(at) && isState(at) ? at + 1 : at;
      for (String kind : WORK) {
        next = Math.max(next, tongue.behind(kind, phrase, at));
      }
      if (next == at || next > to) {
        return false;
      }
      at = next;
    }
    return true;
  }

  /** Whether all words up to a token are states. */
  boolean areStates(int from, int to) {
    for (int i = from; i < to; i++) {
      if (!isState(i)) {
        return false;
      }
    }
    return to > from;
  }

  /** Gathers states that stand apart from the name. */
  void states(int from, int to, Gathered gathered) {
    for (int at = from; at < to; at++) {
      Tongue.@Nullable Match state = tongue.match("state", phrase, at);
      if (state != null) {
        gathered.state(new ReadLine.State(phrase.text(from, to), state.value(), false));
        return;
      }
    }
  }

  private boolean isState(int at) {
    String word = phrase.folded(at, at + 1);
    return tongue.knows("state", word)
        || tongue.knows("adverb", word)
        || tongue.knows("temper", word)
        || tongue.knows("fill", word)
        || (tongue.decimalComma() && tongue.knows("size", word)) // "uova medie"
        || tongue.knows("quality", word);
  }

  /** Takes words off the front until the rest is a name. */
  private @Nullable Stripped front(int from, int to) {
    List<ReadLine.State> states = new ArrayList<>();
    @Nullable String size = null;
    @Nullable String maker = null;
    int adverbs = -1; // where adverbs begin that wait for their state
    int odd = 0;
    int at = from;
    while (at < to) {
      @Nullable Found found = finder.find(phrase.text(at, to));
      Tongue.@Nullable Match state = state(at);
      if (found != null && !sameWithout(found, state, to)) {
        if (dried(found, at, to, from)) {
          return null;
        }
        if (adverbs >= 0) {
          String left = phrase.text(adverbs, at);
          states.add(new ReadLine.State(left, left, true));
        }
        return new Stripped(
            at, to, maker == null ? found : found.alsoAssumed(maker), states, size, odd);
      }
      Tongue.@Nullable Match temper = tongue.match("temper", phrase, at);
      Tongue.@Nullable Match big = tongue.match("size", phrase, at);
      Tongue.@Nullable Match quality = tongue.match("quality", phrase, at);
      Tongue.@Nullable Match adverb = adverb(at);
      Tongue.@Nullable Match taken = state != null ? state : temper;
      if (taken != null && taken.next() < to) {
        String written = phrase.text(adverbs < 0 ? at : adverbs, taken.next());
        states.add(new ReadLine.State(written, taken.value(), state == null));
        adverbs = -1;
        at = taken.next();
      } else if (big != null) {
        size = big.value();
        at = phrase.is(big.next(), ".") ? big.next() + 1 : big.next();
      } else if (adverb != null) {
        adverbs = adverbs < 0 ? at : adverbs;
        at = adverb.next();
      } else if (quality != null) {
        odd++;
        String written = phrase.text(adverbs < 0 ? at : adverbs, quality.next());
        states.add(new ReadLine.State(written, quality.value(), true));
        adverbs = -1;
        at = quality.next();
      } else if (!states.isEmpty() && tongue.match("and", phrase, at) != null) {
        at = tongue.behind("and", phrase, at);
      } else if (tongue.match("of", phrase, at) != null) {
        at = tongue.behind("of", phrase, at);
      } else if (at > from && (phrase.is(at, ",") || phrase.isDash(at))) {
        at++;
      } else if (isMaker(at) && at + 1 < to) {
        odd++;
        String name = phrase.text(at, at + 1);
        states.add(new ReadLine.State(name, name, true));
        maker = "`" + name + "` is read as its maker";
        at++;
      } else if (isEntire(at, to)) {
        states.add(new ReadLine.State(phrase.text(at, at + 1), "whole", true));
        at++;
      } else {
        return null;
      }
    }
    return null;
  }

  /** "A whole nutmeg" is one; "whole spelt flour" is another flour. */
  private boolean isEntire(int at, int to) {
    @Nullable Found rest =
        tongue.match("entire", phrase, at) == null || at + 1 >= to
            ? null
            : finder.find(phrase.text(at + 1, to));
    return rest != null
        && rest.ingredient() != null
        && rest.ingredient().pieces().stream()
            .anyMatch(piece -> piece.piece().equals(PieceMass.EACH));
  }

  /** "Hobday's baking powder": a name that owns the food says who made it, not what it is. */
  private boolean isMaker(int at) {
    String word = phrase.folded(at, at + 1);
    boolean owns =
        phrase.isWord(at) && word.endsWith("'s") && tongue.language().code().equals("en");
    return owns
        && Character.isUpperCase(phrase.text().charAt(phrase.get(at).start()))
        && !NO_MAKERS.contains(word.substring(0, word.length() - 2));
  }

  /** A state, with the adverbs before it: "freshly grated". */
  private Tongue.@Nullable Match state(int from) {
    Tongue.@Nullable Match whole = tongue.match("state", phrase, from);
    if (whole != null) { // "lightly packed"
      return whole;
    }
    int at = from;
    while (tongue.match("adverb", phrase, at) != null) {
      at = tongue.behind("adverb", phrase, at);
      at = phrase.isDash(at) ? at + 1 : at;
    }
    return tongue.match("state", phrase, at);
  }

  private Tongue.@Nullable Match adverb(int at) {
    return tongue.match("adverb", phrase, at);
  }

  /** "Grated nutmeg" is nutmeg, but "powdered sugar" is not sugar that was powdered. */
  private boolean sameWithout(Found found, Tongue.@Nullable Match state, int to) {
    if (state == null || state.next() >= to) {
      return false;
    }
    @Nullable Found without = finder.find(phrase.text(state.next(), to));
    return without != null && found.ingredient() != null && without.isId(found.ingredient().id());
  }

  /** "Fresh thyme" is not dried thyme, though both are called thyme. */
  private boolean dried(Found found, int at, int to, int from) {
    if (at == from || found.ingredient() == null) {
      return false;
    }
    String id = found.ingredient().id();
    boolean dry = id.endsWith("-dried") || id.endsWith("-ground") || id.endsWith("-powder");
    for (int i = from; dry && i < at; i++) {
      @Nullable String quality = tongue.value("quality", phrase.folded(i, i + 1));
      if (quality != null && quality.equals("fresh")) {
        return !phrase.folded(at, to).contains("dried");
      }
    }
    return false;
  }

  private int unknown(int from, int to, Gathered gathered) {
    int end = ends(from, to).size() > 1 ? ends(from, to).get(1) : to;
    gathered.name(phrase.text(from, end), null);
    String name = phrase.text(from, end);
    if (!alternatives(from, end, gathered)) {
      gathered.doubt("no ingredient goes by `" + name + "`" + finder.suggestion(name));
    }
    return end;
  }

  /** "Butter or margarine", "salt and pepper": which, or how much of each, is not said. */
  boolean alternatives(int from, int to, Gathered gathered) {
    List<Integer> starts = new ArrayList<>(List.of(from));
    List<Integer> ends = new ArrayList<>();
    boolean either = false;
    boolean several = false;
    for (int i = from; i < to; i++) {
      boolean or = tongue.match("or", phrase, i) != null || phrase.is(i, "/");
      boolean and = tongue.match("and", phrase, i) != null;
      if (or || and || phrase.is(i, ",")) {
        ends.add(i);
        starts.add(i + 1);
        either |= or;
        several |= or || and;
      }
    }
    ends.add(to);
    List<String> candidates = several ? candidates(starts, ends) : List.of();
    if (candidates.isEmpty()) {
      return false;
    }
    String written = phrase.text(from, to);
    boolean same =
        either && candidates.size() == starts.size() && Set.copyOf(candidates).size() == 1;
    @Nullable Found one = same ? finder.find(candidates.get(0)) : null;
    String why =
        either
            ? "`" + written + "` leaves open which is meant"
            : "`" + written + "` names more than one ingredient; write each on a line of its own";
    gathered.name(
        written, one == null ? Found.unsure(candidates.stream().distinct().toList(), why) : one);
    return true;
  }

  /** Ids of all parts; "light or dark brown sugar" shares its last words. */
  private List<String> candidates(List<Integer> starts, List<Integer> ends) {
    List<String> ids = new ArrayList<>();
    int last = starts.size() - 1;
    for (int i = 0; i <= last; i++) {
      @Nullable Stripped one = front(starts.get(i), ends.get(i));
      @Nullable Found found = one == null ? null : one.found();
      for (int tail = starts.get(last) + 1; found == null && tail < ends.get(last); tail++) {
        String whole =
            phrase.text(starts.get(i), ends.get(i)) + " " + phrase.text(tail, ends.get(last));
        found = finder.find(whole);
      }
      if (found != null && found.ingredient() != null) {
        ids.add(found.ingredient().id());
      } else if (found != null) {
        ids.addAll(found.candidates());
      }
    }
    return ids;
  }
}
