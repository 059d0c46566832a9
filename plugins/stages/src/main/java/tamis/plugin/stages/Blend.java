package tamis.plugin.stages;

import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** Another syrup or sugar that is cooked with the sugar. */
public record Blend(
    @Described(value = "Id or name of the ingredient", example = "glucose-syrup")
        IngredientRef ingredient,
    @Described(value = "How much of it", moreThan = "0 g", atMost = "1000 kg", example = "50 g")
        Mass mass) {}
