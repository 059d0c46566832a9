package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lines that a reader may take in two ways, or that name more than the first food: each tells what
 * is not clear. Lines as bakers write them; common practice, no source.
 */
class DoubtfulLinesTest {
  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "en | zest of 2 lemons and the juice of one | and the juice of one",
        "en | grated rind of 1 lemon with the juice | with the juice",
        "en | yolks of 3 eggs and one white | and one white",
        "fr | le zeste de 2 citrons et le jus d'un | et le jus d'un",
        "de | Schale einer Zitrone und deren Saft | und deren Saft",
        "it | scorza di un limone e il suo succo | e il suo succo",
        "es | ralladura de 1 limón y el zumo | y el zumo",
        "en | 6 eggs without the whites | leaves a part of the egg out",
        "de | 6 Eier ohne Eiweiß | leaves a part of the egg out",
        "en | 2/3 apples | a part of one or a range",
        "fr | 3/4 œufs | a part of one or a range",
        "en | water 1 - 750 g | whether a range is meant",
        "fr | farine 2 500 g | `2 500` is one number",
        "en | 2 1/4-oz packets active dry yeast | `2 1/4` is one number",
        "en | 11/2 cups flour | a space may be missing",
        "de | 1 kl. Dose Milch | Dose Milch",
        "en | water 38 c | no quantity is said",
        "es | azúcar 200 g y una cucharada | y una cucharada",
        "en | 1 lb. flour, do. sugar | do. sugar",
        "en | 1 cup sugar to each pound of fruit | to each pound of fruit",
        "de | Salz 20 g pro kg Mehl | pro kg Mehl",
      })
  void what_is_not_clear_is_told(String language, String line, String why) {
    Intake.Result result = LabelledLines.read(line, language);

    assertThat(result.unresolved()).anyMatch(unresolved -> unresolved.why().contains(why));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "en | 3/4 vanilla bean",
        "en | 3/4 cup water",
        "en | zest of 2 lemons, finely grated",
        "en | 3 eggs, separated",
        "en | 10-12 apples",
        "en | 5/4 cups flour",
        "de | Dinkelmehl 630 500 g",
        "en | 1 14-oz can coconut milk",
        "en | flour 4 C",
      })
  void what_is_clear_is_not_doubted(String language, String line) {
    assertThat(LabelledLines.read(line, language).unresolved()).isEmpty();
  }
}
