package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds which of the words of a line name the ingredient, and what the others say of it. */
final class NameReader {
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

  /** Where adjectives follow the noun, a state right behind it was there when it was measured. */
  private int behindStates(int from, int end, Gathered gathered) {
    int at = from;
    while (tongue.decimalComma() && !tongue.language().code().equals("de") && at < end) {
      Tongue.@Nullable Match state = tongue.match("state", phrase, at);
      if (state == null) {
        return at;
      }
      gathered.state(new ReadLine.State(phrase.text(at, state.next()), state.value(), false));
      at = state.next();
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
    for (int i = last - 1; i > from && isState(i); i--) {
      ends.add(i);
    }
    return ends;
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

  private boolean isState(int at) {
    String word = phrase.folded(at, at + 1);
    return tongue.knows("state", word)
        || tongue.knows("adverb", word)
        || tongue.knows("temper", word)
        || tongue.knows("fill", word)
        || tongue.knows("quality", word);
  }

  /** Takes words off the front until the rest is a name. */
  private @Nullable Stripped front(int from, int to) {
    List<ReadLine.State> states = new ArrayList<>();
    @Nullable String size = null;
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
        return new Stripped(at, to, found, states, size, odd);
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
        at = big.next();
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
      } else {
        return null;
      }
    }
    return null;
  }

  /** A state, with the adverbs before it: "freshly grated". */
  private Tongue.@Nullable Match state(int from) {
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
    List<String> candidates = new ArrayList<>();
    List<Integer> starts = new ArrayList<>(List.of(from));
    boolean either = false;
    int end = from;
    for (int i = from; i <= to; i++) {
      Tongue.@Nullable Match or = i == to ? null : tongue.match("or", phrase, i);
      boolean and = i < to && tongue.match("and", phrase, i) != null;
      boolean slash = phrase.is(i, "/");
      boolean comma = phrase.is(i, ",");
      if (i == to || or != null || and || slash || comma) {
        @Nullable Stripped one = front(starts.get(starts.size() - 1), i);
        if (one != null && one.found().ingredient() != null) {
          candidates.add(one.found().ingredient().id());
        } else if (one != null) {
          candidates.addAll(one.found().candidates());
        }
        starts.add(i + 1);
        either |= or != null || slash;
        end += or != null || slash || and ? 1 : 0;
      }
    }
    if (end == from || candidates.isEmpty()) {
      return false;
    }
    String written = phrase.text(from, to);
    String why =
        either
            ? "`" + written + "` leaves open which is meant"
            : "`" + written + "` names more than one ingredient; write each on a line of its own";
    gathered.name(written, Found.unsure(candidates.stream().distinct().toList(), why));
    return true;
  }
}
