package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.table.Row;

class EnergyFactorsTest {

  @ParameterizedTest(name = "{9} kJ, {10} kcal ({11})")
  @CsvFileSource(resources = "/eu-energy.csv", numLinesToSkip = 1)
  void kilojoules_and_kilocalories_are_counted_each_by_its_own_factors(
      double fat,
      double carbohydrate,
      double protein,
      double fibre,
      double polyols,
      double alcohol,
      double acids,
      double erythritol,
      double salatrims,
      double kilojoules,
      double kcal) {
    Map<String, Double> parts =
        Map.of(
            "fat", fat,
            "carbohydrate", carbohydrate,
            "protein", protein,
            "fibre", fibre,
            "polyols", polyols,
            "alcohol", alcohol,
            "organic-acids", acids,
            "erythritol", erythritol,
            "salatrims", salatrims);
    assertThat(EnergyFactors.kilojoules("EU", parts)).isEqualTo(kilojoules, within(1e-9));
    assertThat(EnergyFactors.kcal("EU", parts)).isEqualTo(kcal, within(1e-9));
  }

  @Test
  void the_sample_label_has_230_kcal_by_4_4_9() {
    double kcal =
        EnergyFactors.kcal("US", Map.of("fat", 8.0, "carbohydrate", 37.0, "protein", 3.0));
    assertThat(kcal).isEqualTo(232.0);
    assertThat(Rounding.of("us-energy", kcal).amount().intValue()).isEqualTo(230);
  }

  /** The energy that the source prints for its 321 foods, from the factors it prints with them. */
  @Test
  void every_measured_food_has_the_energy_of_its_own_factors() {
    List<Row> measured =
        IngredientTables.INGREDIENTS.rows().stream()
            .filter(r -> r.source().equals("usda-sr28") && r.text("basis").equals("measured"))
            .toList();
    assertThat(measured).hasSize(321);
    int byFactors = 0;
    for (Row row : measured) {
      Ingredient food = ReferenceIngredients.standard().byId(row.text("ingredient"));
      double printed = food.per100g(Nutrient.ENERGY_KCAL);
      assertThat(EnergyFactors.own(food))
          .as(food.id())
          .isEqualTo(printed, within(Math.max(3, 0.02 * printed)));
      if (EnergyFactors.byOwnFactors(food) != null) {
        byFactors++;
      }
    }
    assertThat(byFactors).as("foods whose source prints all three factors").isGreaterThan(200);
  }
}
