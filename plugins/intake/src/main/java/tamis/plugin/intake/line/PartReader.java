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
  /** "Seeds of a vanilla pod": what is bought and counted is the whole. */
  static final String CONTENT = "content";

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

  /**
   * Reads such a line from a token on; tells the token behind the name. {@code from} if it is no
   * such line, and then nothing was gathered.
   */
  int read(int from, Gathered gathered) {
    List<ReadLine.State> states = new ArrayList<>();
    List<String> parts = new ArrayList<>();
    int nameStart = parts(from, states, parts);
    if (parts.isEmpty()) {
      return from;
    }
    int at = tongue.behindOf(phrase, nameStart);
    int named = at;
    @Nullable Amount amount = new AmountReader(tongue, phrase).single(at);
    if (amount == null) {
      return from;
    }
    at = amount.next();
    Tongue.@Nullable Match size = tongue.match("size", phrase, at);
    at = size == null ? at : size.next();
    int to = new Tail(tongue, phrase).nameEnd(at);
    int name = tongue.behind("quality", phrase, at);
    name = phrase.isDash(name) ? name + 1 : name;
    int end = new NameReader(tongue, finder, phrase).knownEnd(name, beforeAnd(name, to));
    @Nullable Found whole = finder.find(phrase.text(name, end));
    if (whole == null || whole.ingredient() == null) {
      return from;
    }
    List<String> ids = new ArrayList<>();
    for (String part : parts) {
      @Nullable String id = id(whole.ingredient(), part);
      if (id == null) {
        return from;
      }
      ids.add(id);
    }
    states.forEach(gathered::state);
    if (size != null) {
      gathered.size(size.value());
    }
    gathered.measure(new Measure(amount, null, false, null, List.of(), at));
    String written = words(from, nameStart, named) + " " + phrase.text(at, end);
    gathered.name(written, found(ids, written, parts.contains(CONTENT)));
    gathered.preparation(phrase.text(end, to));
    return to;
  }

  /** "Zest of 2 lemons and juice of 1": the second is told as what is left of the line. */
  private int beforeAnd(int from, int to) {
    int stop = from;
    while (stop < to && tongue.match("and", phrase, stop) == null) {
      stop++;
    }
    return phrase.is(stop - 1, ".") ? stop - 1 : stop;
  }

  private Found found(List<String> ids, String written, boolean content) {
    if (ids.size() > 1) {
      return Found.unsure(
          ids, "`" + written + "` are two ingredients; write each on a line of its own");
    }
    String id = ids.get(0);
    return Found.of(larder.byId(id), content ? "`" + id + "` is counted whole" : null, false);
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
    boolean begins = tongue.match("partof", phrase, from) != null;
    int at = begins ? from : tongue.behind("of", phrase, from);
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
      } else if (!parts.isEmpty() && phrase.is(at, "+")) {
        at++;
      } else if (the || (phrase.is(at, ",") && !parts.isEmpty())) {
        at++;
      } else {
        return at;
      }
    }
    return at;
  }

  private @Nullable String id(Ingredient whole, String part) {
    if (part.equals(CONTENT)) {
      return whole.id();
    }
    boolean egg = whole.id().equals("egg");
    boolean yellow = part.equals("yolk") && !egg; // "das Gelbe einer Zitrone"
    boolean ofEgg = part.equals("white") || (part.equals("yolk") && egg);
    if (egg != ofEgg) {
      return null;
    }
    try {
      return larder.byId(whole.id() + "-" + (yellow ? "zest" : part)).id();
    } catch (Refusal unknown) {
      return null;
    }
  }
}
