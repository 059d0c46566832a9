package tamis.engine.kitchen;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.PriceList;

/** Documents held in memory, one revision of each. */
final class MemoryShelf implements Shelf {
  private final Map<String, Formula> formulas = new LinkedHashMap<>();
  private final Map<String, Ingredient> ingredients = new LinkedHashMap<>();
  private final Map<String, Set<String>> byName;
  private final PriceList prices;

  MemoryShelf(List<Formula> formulas, List<Ingredient> ingredients, PriceList prices) {
    this.prices = prices;
    for (Formula formula : formulas) {
      if (formula.id() == null) {
        throw new IllegalArgumentException("a formula on a shelf needs an id");
      }
      this.formulas.put(formula.id(), formula);
    }
    ingredients.forEach(ingredient -> this.ingredients.put(ingredient.id(), ingredient));
    this.byName = nameIndex(ingredients);
  }

  static Map<String, Set<String>> nameIndex(Collection<Ingredient> ingredients) {
    Map<String, Set<String>> index = new HashMap<>();
    for (Ingredient ingredient : ingredients) {
      for (List<String> names : ingredient.names().values()) {
        for (String name : names) {
          index
              .computeIfAbsent(new IngredientRef(name).folded(), n -> new LinkedHashSet<>())
              .add(ingredient.id());
        }
      }
    }
    return index;
  }

  @Override
  public long revision() {
    return 1;
  }

  @Override
  public @Nullable Formula formula(String id, @Nullable Integer revision) {
    return revision == null || revision == 1 ? formulas.get(id) : null;
  }

  @Override
  public @Nullable Ingredient ingredient(String id) {
    return ingredients.get(id);
  }

  @Override
  public Set<String> ingredientsNamed(String folded) {
    return byName.getOrDefault(folded, Set.of());
  }

  @Override
  public PriceList prices() {
    return prices;
  }

  @Override
  public Collection<String> formulaIdsNear(String id) {
    return formulas.keySet();
  }
}
