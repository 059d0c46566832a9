package tamis.plugin.intake.name;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;

/**
 * What a name leads to.
 *
 * @param ingredient the one it stands for, or null
 * @param candidates ids it may stand for, if that is not told
 * @param assumed what is taken for granted with it, or null
 * @param foreign whether it is a name in another language than the page's
 * @param why there is none, or null
 */
public record Found(
    @Nullable Ingredient ingredient,
    List<String> candidates,
    @Nullable String assumed,
    boolean foreign,
    @Nullable String why) {

  public static Found of(Ingredient ingredient, @Nullable String assumed, boolean foreign) {
    return new Found(ingredient, List.of(), assumed, foreign, null);
  }

  public static Found unsure(List<String> candidates, String why) {
    return new Found(null, List.copyOf(candidates), null, false, why);
  }

  /** The same, as a name in another language than the page's. */
  Found inAnotherLanguage() {
    return new Found(ingredient, candidates, assumed, true, why);
  }

  /** The same, with one thing more that is taken for granted. */
  public Found alsoAssumed(String more) {
    String all = assumed == null ? more : assumed + "; " + more;
    return new Found(ingredient, candidates, all, foreign, why);
  }

  public boolean isKnown() {
    return ingredient != null;
  }

  public boolean isId(String id) {
    return ingredient != null && ingredient.id().equals(id);
  }
}
