package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** What is on hand of one ingredient or finished part. */
@ExactlyOne({"ingredient", "formula"})
public record StockItem(
    @Described(value = "Id or any name of an ingredient", example = "milk-whole")
        @Nullable IngredientRef ingredient,
    @Described(value = "A finished part", example = "pastry-cream") @Nullable FormulaRef formula,
    @Described(value = "How much is on hand", example = "120 g") Quantity quantity) {}
