package tamis.engine.quantity;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.List;
import java.util.function.Function;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientRef;

/**
 * Any text gives a value or a refusal, never another exception. In a build the inputs beside this
 * class are run; to search for more: {@code JAZZER_FUZZ=1 mvn -q -pl engine -am test
 * -Dtest=ReadersFuzzTest -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class ReadersFuzzTest {
  private static final List<Function<String, ?>> READERS =
      List.of(
          Quantity::parse,
          Mass::parse,
          Temperature::parse,
          Length::parse,
          Money::parse,
          Fraction::parse,
          UnitName::parse,
          text -> IngredientRef.parse(text).folded());

  @FuzzTest(maxDuration = "2m")
  void any_text_gives_a_value_or_a_refusal(FuzzedDataProvider data) {
    String text = data.consumeRemainingAsString();
    for (Function<String, ?> reader : READERS) {
      try {
        Object value = reader.apply(text);
        if (!reader.apply(value.toString()).equals(value)) {
          throw new AssertionError("`" + value + "` is not read back");
        }
      } catch (Refusal expected) {
        continue;
      }
    }
  }
}
