package tamis.engine.formula;

import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;

/** Where expansion looks up what a formula names. */
public interface Larder {
  /**
   * @throws tamis.engine.fault.Refusal if there is none
   */
  Formula formula(FormulaRef reference);

  /**
   * @throws tamis.engine.fault.Refusal if there is none
   */
  Ingredient ingredient(IngredientRef reference);
}
