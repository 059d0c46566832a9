package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Finds which of the words of a line name the ingredient, and what the others say of it. */
final class NameReader {
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
    NameFront.@Nullable Stripped stripped = null;
    for (int stop : ends(from, end)) {
      stripped =
          stripped == null ? new NameFront(tongue, finder, phrase).read(from, stop) : stripped;
    }
    if (stripped == null && turned(from, end, gathered)) {
      return end;
    }
    stripped = stripped == null ? beforeNumber(from, end) : stripped;
    if (stripped == null) {
      return unknown(from, end, gathered);
    }
    gathered.name(phrase.text(stripped.from(), stripped.to()), stripped.found());
    stripped.states().forEach(gathered::state);
    if (stripped.size() != null) {
      gathered.size(stripped.size());
    }
    gathered.loosen(0.05 * stripped.odd());
    return behindStates(stripped.to(), end, gathered);
  }

  /** Behind a known name that has nothing but work behind it; {@code to} if there is none. */
  int knownEnd(int from, int to) {
    for (int stop : ends(from, to)) {
      @Nullable Found found = finder.find(phrase.text(from, stop));
      if (found != null && found.isKnown()) {
        return stop;
      }
    }
    return to;
  }

  /** "80 g salt 2 %", "water 1", "levain 100 % hydration": a name before a number, or null. */
  private NameFront.@Nullable Stripped beforeNumber(int from, int end) {
    NameFront.@Nullable Stripped stripped = null;
    for (int i = end - 1; i > from && stripped == null; i--) {
      boolean part = i == end - 1 && phrase.get(i).text().length() == 1;
      boolean grade = tongue.match("grade", phrase, i + 1) != null; // "gelatine 200 bloom"
      boolean column = phrase.is(i + 1, "%") || part || grade;
      boolean apart = phrase.isNumber(i) && !phrase.touches(i) && column; // "flour 550" is a type
      stripped = apart ? new NameFront(tongue, finder, phrase).read(from, i) : null;
    }
    return stripped;
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
  boolean isWork(int from, int to) {
    int at = from;
    while (at < to) {
      int next = phrase.isWord(at) && isState(at) ? at + 1 : at;
      for (String kind : WORK) {
        int behind = tongue.behind(kind, phrase, at);
        next = behind <= to ? Math.max(next, behind) : next;
      }
      if (next == at) {
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

  private int unknown(int from, int to, Gathered gathered) {
    int end = ends(from, to).size() > 1 ? ends(from, to).get(1) : to;
    gathered.name(phrase.text(from, end), null);
    String name = phrase.text(from, end);
    if (!alternatives(from, end, gathered)) {
      gathered.doubt("no ingredient goes by `" + name + "`" + finder.suggestion(name));
      gathered.name(name, within(from, end));
    }
    return end;
  }

  /** "Quick jelly powder": a name within the words may be what is meant, but it is not said. */
  private @Nullable Found within(int from, int to) {
    boolean nounFirst = tongue.decimalComma() && !tongue.language().code().equals("de");
    for (int words = to - from - 1; words > 0; words--) {
      String part = nounFirst ? phrase.text(from, from + words) : phrase.text(to - words, to);
      @Nullable Found found = finder.find(part);
      @Nullable Ingredient ingredient = found == null ? null : found.ingredient();
      if (found != null) {
        List<String> ids = ingredient == null ? found.candidates() : List.of(ingredient.id());
        return Found.unsure(ids, "whether it is a kind of `" + part + "` is not said");
      }
    }
    List<String> near = finder.near(phrase.text(from, to));
    return near.isEmpty() ? null : Found.unsure(near, "it may be misspelled");
  }

  /** "Butter or margarine", "salt and pepper": which, or how much of each, is not said. */
  boolean alternatives(int from, int to, Gathered gathered) {
    List<Integer> starts = new ArrayList<>(List.of(from));
    List<Integer> ends = new ArrayList<>();
    boolean either = false;
    boolean several = false;
    for (int i = from; i < to; i++) {
      boolean or = tongue.match("or", phrase, i) != null || phrase.is(i, "/");
      boolean and = tongue.match("and", phrase, i) != null || phrase.is(i, "+");
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
        written,
        one == null
            ? Found.unsure(candidates.stream().distinct().toList(), why)
            : one.alsoAssumed("either is taken as `" + candidates.get(0) + "`"));
    return true;
  }

  /** Ids of all parts; "light or dark brown sugar" shares its last words. */
  private List<String> candidates(List<Integer> starts, List<Integer> ends) {
    List<String> ids = new ArrayList<>();
    int last = starts.size() - 1;
    for (int i = 0; i <= last; i++) {
      NameFront.@Nullable Stripped one =
          new NameFront(tongue, finder, phrase).read(starts.get(i), ends.get(i));
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
