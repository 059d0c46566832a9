package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.thermal.Proximates;

/** What is in the bowl, so that heat can be told in kilojoules. */
@ExactlyOne({"ingredient", "composition"})
public record StageBatch(
    @Described(value = "How much is in the bowl", moreThan = "0 g", example = "1.2 kg") Mass mass,
    @Described(value = "Id or name of the ingredient", example = "butter-unsalted")
        @Nullable IngredientRef ingredient,
    @Described("What it is made of, in percent") @Nullable Proximates composition,
    @Described("Which fat it is, where only the composition is told") @Nullable FatKind fat) {}
