package tamis.plugin.intake.line;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** A second part named behind the first: "zest of 2 lemons and the juice of one". */
record OtherPart(Tongue tongue) {
  private static final Set<String> OF_EGGS = Set.of("white", "yolk");
  private static final Set<String> EGG_PARTS = Set.of("egg-white", "egg-yolk");

  void check(Gathered gathered) {
    @Nullable Found found = gathered.found();
    @Nullable Ingredient ingredient = found == null ? null : found.ingredient();
    if (ingredient == null) {
      return;
    }
    String id = ingredient.id();
    boolean part = id.endsWith("-zest") || id.endsWith("-juice") || EGG_PARTS.contains(id);
    boolean egg = id.equals("egg") || (id.startsWith("egg-") && !part);
    for (String said : part || egg ? List.copyOf(gathered.preparations()) : List.<String>of()) {
      if (!gathered.isSettled()) {
        return;
      }
      if (part && names(said, Set.of(), true)) {
        gathered.beside(said);
      } else if (egg && names(said, OF_EGGS, false)) { // "6 eggs without the whites"
        gathered.doubt("whether `" + said + "` leaves a part of the egg out is not said");
      }
    }
  }

  /**
   * Whether words name a part of an egg or fruit.
   *
   * @param parts which parts; empty for any that weighs less than the whole
   * @param joined whether "and", "plus" or "with" must stand before it
   */
  private boolean names(String said, Set<String> parts, boolean joined) {
    Phrase phrase = Phrase.of(said, tongue);
    boolean joins = !joined;
    for (int i = 0; i < phrase.size(); i++) {
      Tongue.@Nullable Match match = tongue.match("partof", phrase, i);
      String part = match == null ? PartReader.CONTENT : match.value();
      if (joins && !part.equals(PartReader.CONTENT) && (parts.isEmpty() || parts.contains(part))) {
        return true;
      }
      joins |= phrase.is(i, "+") || tongue.match("and", phrase, i) != null;
      joins |= tongue.match("plus", phrase, i) != null;
      joins |= Leftover.WITH.contains(Phrase.folded(phrase.get(i).text()));
    }
    return false;
  }
}
