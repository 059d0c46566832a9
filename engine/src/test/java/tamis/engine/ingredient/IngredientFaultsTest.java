package tamis.engine.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** What the document of an ingredient may say. */
class IngredientFaultsTest {

  private static Ingredient ingredient(String nutrient, double amount) {
    return new RecordReader(References.UNCHECKED, Limits.usual())
        .read(
            Ingredient.class,
            Map.of(
                "id",
                "own",
                "names",
                Map.of("en", List.of("own")),
                "per100g",
                Map.of(nutrient, amount)));
  }

  @ParameterizedTest(name = "{1} of {0} in 100 g")
  @CsvSource({
    "fat, 100.5, 'fat must be 0 to 100 g in 100 g, was 100.5'",
    "water, -1, 'water must be 0 to 100 g in 100 g, was -1'",
    "sodiumMg, 100001, 'sodium must be 0 to 100000 mg in 100 g, was 100001'",
    "energyKcal, 1200, 'energy kcal must be 0 to 1000 kcal in 100 g, was 1200'",
    "energyKj, 5000, 'energy kj must be 0 to 4200 kJ in 100 g, was 5000'"
  })
  void more_than_there_can_be_in_100_g_is_refused(String nutrient, double amount, String message) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> ingredient(nutrient, amount));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults()).hasSize(1);
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
    assertThat(refusal.faults().get(0).pointer()).isEqualTo("/per100g/" + nutrient);
    assertThat(refusal.faults().get(0).message()).isEqualTo(message);
  }

  @ParameterizedTest
  @CsvSource({"fat, 100", "sodiumMg, 39340", "energyKcal, 902", "energyKj, 3774", "water, 0"})
  void what_pure_foods_have_is_taken(String nutrient, double amount) {
    assertThat(ingredient(nutrient, amount).per100g()).containsValue(amount);
  }
}
