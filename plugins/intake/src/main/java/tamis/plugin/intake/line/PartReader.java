package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.Larder;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads parts of an egg or fruit: "yolks of 4 eggs", "juice of half a lemon", "Whites 3 eggs". */
final class PartReader {
  private final Tongue tongue;
  private final NameFinder finder;
  private final Larder larder;
  private final Phrase phrase;

  PartReader(Tongue tongue, NameFinder finder, Larder larder, Phrase phrase) {
    this.tongue = tongue;
    this.finder = finder;
    this.larder = larder;
    this.phrase = phrase;
  }

  /** Reads such a line from a token on; false if it is none, and then nothing was gathered. */
  boolean read(int from, int to, Gathered gathered) {
    List<ReadLine.State> states = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    int nameStart = parts(from, states, parts);
    if (parts.isEmpty()) {
      return false;
    }
    int at = behindOf(nameStart);
    int named = at;
    @Nullable Amount amount = new AmountReader(tongue, phrase).single(at);
    if (amount == null) {
      return false;
    }
    at = amount.next();
    Tongue.@Nullable Match size = tongue.match("size", phrase, at);
    at = size == null ? at : size.next();
    int name = tongue.behind("quality", phrase, at);
    name = phrase.isDash(name) ? name + 1 : name;
    @Nullable Found whole = finder.find(phrase.text(name, to));
    if (whole == null || whole.ingredient() == null) {
      return false;
    }
    List<String> ids = new ArrayList<>();
    for (String part : parts) {
      @Nullable String id = id(whole.ingredient(), part);
      if (id == null) {
        return false;
      }
      ids.add(id);
    }
    states.forEach(gathered::state);
    if (size != null) {
      gathered.size(size.value());
    }
    gathered.measure(new Measure(amount, null, false, null, List.of(), at));
    String written = words(from, nameStart, named) + " " + phrase.text(at, to);
    gathered.name(written, found(ids, written));
    return true;
  }

  private Found found(List<String> ids, String written) {
    return ids.size() > 1
        ? Found.unsure(
            ids, "`" + written + "` are two ingredients; write each on a line of its own")
        : Found.of(larder.byId(ids.get(0)), null, false);
  }

  /** The part in the source's words, without states within them: "zest and juice of". */
  private String words(int from, int to, int behindOf) {
    StringBuilder words = new StringBuilder();
    int at = from;
    while (at < to) {
      Tongue.@Nullable Match part = tongue.match("partof", phrase, at);
      boolean and = !words.isEmpty() && tongue.match("and", phrase, at) != null;
      int next = part == null ? at + 1 : part.next();
      if (part != null || and) {
        words.append(words.isEmpty() ? "" : " ").append(phrase.text(at, next));
      }
      at = next;
    }
    String of = phrase.text(to, behindOf);
    boolean elided = of.endsWith("'") || of.endsWith("’");
    return of.isEmpty() || elided ? words.toString() : words + " " + of;
  }

  /** Gathers parts and states before them; tells the token behind. */
  private int parts(int from, List<ReadLine.State> states, List<String> parts) {
    int at = tongue.behind("of", phrase, from);
    int adverbs = -1;
    while (phrase.has(at)) {
      Tongue.@Nullable Match part = tongue.match("partof", phrase, at);
      Tongue.@Nullable Match state = tongue.match("state", phrase, at);
      Tongue.@Nullable Match adverb = tongue.match("adverb", phrase, at);
      boolean the = parts.isEmpty() && tongue.match("about", phrase, at) != null;
      if (part != null) {
        parts.add(part.value());
        at = part.next();
      } else if (state != null) {
        String written = phrase.text(adverbs < 0 ? at : adverbs, state.next());
        states.add(new ReadLine.State(written, state.value(), false));
        adverbs = -1;
        at = state.next();
      } else if (adverb != null) {
        adverbs = adverbs < 0 ? at : adverbs;
        at = adverb.next();
      } else if (!parts.isEmpty() && tongue.match("and", phrase, at) != null) {
        at = tongue.behind("and", phrase, at);
      } else if (the || (phrase.is(at, ",") && !parts.isEmpty())) {
        at++;
      } else {
        return at;
      }
    }
    return at;
  }

  private int behindOf(int from) {
    int at = from;
    for (int words = 0; words < 2; words++) {
      Tongue.@Nullable Match of = tongue.match("of", phrase, at);
      at = of == null ? at : of.next();
    }
    return at;
  }

  private @Nullable String id(Ingredient whole, String part) {
    boolean egg = whole.id().equals("egg");
    boolean ofEgg = part.equals("yolk") || part.equals("white");
    if (egg != ofEgg) {
      return null;
    }
    try {
      return larder.byId(whole.id() + "-" + part).id();
    } catch (Refusal unknown) {
      return null;
    }
  }
}
