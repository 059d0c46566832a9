package tamis.plugin.nutrition;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings what labels say: figures, allergens, the list of ingredients. */
public final class NutritionPlugin implements Plugin {
  @Override
  public String name() {
    return "nutrition";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Nutrition(), new Allergens(), new IngredientList(), new Substitution());
  }

  @Override
  public List<Table> tables() {
    return List.of(
        AllergenRules.REGIMES,
        AllergenRules.EXEMPTIONS,
        AllergenRules.CODES,
        AllergenRules.REVIEW,
        AllergenRules.WORDING,
        LabelRules.TABLE,
        FigureTables.FIGURES,
        FigureTables.ROUNDING,
        FigureTables.TOLERANCES,
        FigureTables.ENERGY,
        FigureTables.ALCOHOL,
        FigureTables.RETENTION,
        FigureTables.SERVINGS,
        Cautions.TABLE);
  }
}
