package tamis.plugin.intake.line;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Fruit and vegetables that are kept in cans, dried or frozen are other foods than fresh ones. */
record Kept(Tongue tongue) {
  private static final Set<String> FRESH = Set.of("fruit", "vegetable");

  void check(Gathered gathered) {
    @Nullable Found found = gathered.found();
    @Nullable Ingredient ingredient = found == null ? null : found.ingredient();
    @Nullable Measure measure = gathered.measure();
    boolean can = measure != null && "can".equals(measure.unit());
    if (can) {
      drained(gathered);
    }
    if (ingredient == null || !FRESH.contains(String.valueOf(ingredient.kind()))) {
      return;
    }
    if (can && !isSoldInCans(ingredient)) {
      gathered.doubt("`" + ingredient.id() + "` is the fresh food; what comes in a can is another");
    }
    for (String said : gathered.preparations()) {
      Phrase phrase = Phrase.of(said, tongue);
      if (tongue.match("kept", phrase, 0) != null && !isOfItsName(ingredient, said)) {
        gathered.doubt("whether `" + ingredient.id() + "` or another food is meant is not said");
        return;
      }
    }
  }

  private void drained(Gathered gathered) {
    for (String said : gathered.preparations()) {
      Phrase phrase = Phrase.of(said, tongue);
      for (int i = 0; i < phrase.size(); i++) {
        if (tongue.match("drained", phrase, i) != null) {
          gathered.doubt("what is drained off is in the weight of the can; write what is left");
          return;
        }
      }
    }
  }

  private static boolean isSoldInCans(Ingredient ingredient) {
    return ingredient.id().endsWith("-puree")
        || ingredient.names().getOrDefault("en", List.of()).stream()
            .anyMatch(name -> name.startsWith("canned") || name.startsWith("tinned"));
  }

  /** "Blueberries, frozen" is an ingredient of its own, and was found. */
  private static boolean isOfItsName(Ingredient ingredient, String said) {
    return ingredient.id().contains(Phrase.folded(said));
  }
}
