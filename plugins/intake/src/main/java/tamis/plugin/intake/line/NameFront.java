package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.PieceMass;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Takes states, sizes and makers off the front of words until the rest is a name. */
record NameFront(Tongue tongue, NameFinder finder, Phrase phrase) {
  private static final String MILLED = "milled";

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

  /**
   * A name with what was taken off at its ends.
   *
   * @param from first token of the name
   * @param to behind its last token
   */
  record Stripped(
      int from, int to, Found found, List<ReadLine.State> states, @Nullable String size, int odd) {}

  /** Takes words off the front until the rest is a name. */
  @Nullable Stripped read(int from, int to) {
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
        within(found, state, at, states);
        Found told = maker == null ? found : found.alsoAssumed(maker);
        return new Stripped(at, to, orMilled(told, states), states, size, odd);
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

  /** "Flaked almonds" is a name; what they weigh by the cup is that of their state. */
  private void within(
      Found found, Tongue.@Nullable Match state, int at, List<ReadLine.State> states) {
    @Nullable Ingredient ingredient = found.ingredient();
    if (state != null && ingredient != null && ingredient.states().contains(state.value())) {
      states.add(new ReadLine.State(phrase.text(at, state.next()), state.value(), false));
    }
  }

  /** "Ground cinnamon" is cinnamon, but powdered honey is another food than honey. */
  private static Found orMilled(Found found, List<ReadLine.State> states) {
    @Nullable Ingredient ingredient = found.ingredient();
    boolean milled = states.stream().anyMatch(state -> state.known().equals(MILLED));
    return ingredient == null || !milled || "spice".equals(ingredient.kind())
        ? found
        : Found.unsure(
            List.of(ingredient.id()),
            "whether `"
                + ingredient.id()
                + "` or what is milled of it is another food is not said");
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
    boolean owns = phrase.isWord(at) && (word.endsWith("'s") || word.endsWith("s'"));
    return owns
        && tongue.language().code().equals("en")
        && Character.isUpperCase(phrase.text().charAt(phrase.get(at).start()))
        && !NO_MAKERS.contains(word.replaceFirst("'s$|s'$", ""));
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
}
