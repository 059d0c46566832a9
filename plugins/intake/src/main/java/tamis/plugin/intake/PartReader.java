package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;

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
    @Nullable Found whole = finder.find(phrase.text(at, to));
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
    String written = phrase.text(start(from), named) + " " + phrase.text(at, to);
    gathered.name(written, found(ids, written));
    return true;
  }

  private Found found(List<String> ids, String written) {
    return ids.size() > 1
        ? Found.unsure(
            ids, "`" + written + "` are two ingredients; write each on a line of its own")
        : Found.of(larder.byId(ids.get(0)), null, false);
  }

  /** Where the part itself is named, behind "the" and states. */
  private int start(int from) {
    int at = from;
    while (tongue.match("partof", phrase, at) == null) {
      at++;
    }
    return at;
  }

  /** Gathers parts and states before them; tells the token behind. */
  private int parts(int from, List<ReadLine.State> states, List<String> parts) {
    int at = from;
    StringBuilder adverbs = new StringBuilder();
    while (phrase.has(at)) {
      Tongue.@Nullable Match part = tongue.match("partof", phrase, at);
      Tongue.@Nullable Match state = tongue.match("state", phrase, at);
      Tongue.@Nullable Match adverb = tongue.match("adverb", phrase, at);
      boolean the = parts.isEmpty() && tongue.match("about", phrase, at) != null;
      if (part != null) {
        parts.add(part.value());
        at = part.next();
      } else if (state != null) {
        states.add(
            new ReadLine.State(adverbs + phrase.text(at, state.next()), state.value(), false));
        adverbs.setLength(0);
        at = state.next();
      } else if (adverb != null) {
        adverbs.append(phrase.text(at, adverb.next())).append(' ');
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
