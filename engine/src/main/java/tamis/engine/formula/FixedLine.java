package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** One ingredient, over all parts or at one place, whose quantity rules the batch. */
@ExactlyOne({"ingredient", "path"})
public record FixedLine(
    @Described(value = "The ingredient, counted over all parts", example = "egg")
        @Nullable IngredientRef ingredient,
    @Described(
            value = "One line, as `path` of the answer names it",
            example = "/lines/3",
            most = 2_000)
        @Nullable String path,
    @Described(value = "How much of it is used", example = "3 each") Quantity quantity) {}
