package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.quantity.Fraction;
import tamis.engine.record.Described;

/** What cooking leaves of a nutrient, where a shop knows better than the tables. */
public record Retention(
    @Described(value = "The nutrient", example = "vitaminCMg") Nutrient nutrient,
    @Described(value = "Id of the ingredient; of all if left out", example = "strawberry")
        @Nullable IngredientRef ingredient,
    @Described(value = "The part that is left", example = "75 %") Fraction part) {

  boolean isOf(Ingredient other) {
    return ingredient == null
        || ingredient.folded().equals(other.id())
        || other.names().values().stream()
            .anyMatch(
                names ->
                    names.stream()
                        .anyMatch(n -> new IngredientRef(n).folded().equals(ingredient.folded())));
  }
}
