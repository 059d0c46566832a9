package tamis.engine.kitchen;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Trial;

/** A shop's own documents at one revision. Implementations may be used by many threads. */
public interface Shelf {
  /** The revision over formulas, ingredients and prices. */
  long revision();

  /** When that revision was written, or null if that is not known. */
  default @Nullable Instant written() {
    return null;
  }

  /** A formula by id, as it was at {@code revision}, or the newest; null if there is none. */
  @Nullable Formula formula(String id, @Nullable Integer revision);

  /** A shop's own ingredient by id, or null. */
  @Nullable Ingredient ingredient(String id);

  /** Ids of the shop's own ingredients that go by this name, in lower case. */
  Set<String> ingredientsNamed(String folded);

  /** Some ids near this one, for suggestions. */
  Collection<String> formulaIdsNear(String id);

  /** The shop's prices; empty if none were set. */
  default PriceList prices() {
    return PriceList.empty();
  }

  /** A trial by id, or null. */
  default @Nullable Trial trial(String id) {
    return null;
  }

  /** All trials of a formula, of any revision, in the order in which they were started. */
  default List<Trial> trialsOf(String formula) {
    return List.of();
  }

  /** A shelf of documents held in memory, for programs that use the engine without a server. */
  static Shelf of(List<Formula> formulas, List<Ingredient> ingredients) {
    return of(formulas, ingredients, PriceList.empty());
  }

  /** The same, with a shop's prices. */
  static Shelf of(List<Formula> formulas, List<Ingredient> ingredients, PriceList prices) {
    return new MemoryShelf(formulas, ingredients, prices);
  }

  /** A shelf with nothing on it. */
  static Shelf empty() {
    return of(List.of(), List.of());
  }

  /** The names of ingredients in the form in which they are compared, with the ids they lead to. */
  static Map<String, Set<String>> nameIndex(Collection<Ingredient> ingredients) {
    return MemoryShelf.nameIndex(ingredients);
  }
}
