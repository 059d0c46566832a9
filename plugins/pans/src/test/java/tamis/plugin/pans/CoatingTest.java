package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.note.Remark;
import tamis.engine.pan.CoatVolumes;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class CoatingTest extends CalculationContract<Coating.Input, Coating.Result> {
  private static final double CUBIC_INCH = 2.54 * 2.54 * 2.54;

  @Override
  protected Coating calculation() {
    return new Coating();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @Override
  protected boolean namesSources() {
    return false;
  }

  @Test
  void the_published_cake_takes_324_cubic_inches_of_cream_alone() {
    Map<String, Object> input =
        Map.of(
            "cake",
            Map.of("shape", "round", "diameter", "18 in", "layers", 2, "layerHeight", "3.5 in"),
            "top",
            "0.375 in",
            "side",
            "0.375 in",
            "between",
            "0.25 in");
    CoatVolumes cream = result(input).millilitres();
    assertThat(cream.top() / CUBIC_INCH).isEqualTo(95.42587685, within(1e-6));
    assertThat(cream.side() / CUBIC_INCH).isEqualTo(165.0624687, within(1e-6));
    assertThat(cream.between() / CUBIC_INCH).isEqualTo(63.61725124, within(1e-6));
    assertThat(cream.total() / CUBIC_INCH).isEqualTo(324.106, within(1e-3));
    assertThat(cream.total()).isEqualTo(5311, within(1.0));
    assertThat(result(input).grams()).as("no density is told").isNull();
  }

  @Test
  void the_mass_follows_density_or_overrun() {
    Map<String, Object> input = cake();
    input.put("density", "0.55 g/ml");
    Coating.Result byDensity = result(input);
    assertThat(byDensity.grams()).isEqualTo(byDensity.millilitres().total() * 0.55, within(1e-9));
    input.remove("density");
    input.put("mixDensity", "1 g/ml");
    input.put("overrunPercent", 100 / 0.55 - 100);
    assertThat(result(input).grams()).isEqualTo(byDensity.grams(), within(1e-9));
  }

  @Test
  void the_formula_of_the_cream_is_made_so_many_times() {
    Map<String, Object> input = cake();
    input.put("formula", cream(Map.of("density", "0.5 g/ml", "makeUpLoss", "20 %")));
    Coating.Result result = result(input);
    assertThat(result.grams()).isEqualTo(result.millilitres().total() * 0.5, within(1e-9));
    assertThat(result.factor()).isEqualTo(result.grams() / 400, within(1e-9));
  }

  @Test
  void a_formula_without_density_is_refused() {
    Map<String, Object> input = cake();
    input.put("formula", cream(Map.of("portions", 4)));
    assertThat(Given.told(() -> result(input))).containsExactly("no-density /formula");
  }

  private static Map<String, Object> cream(Map<String, Object> yield) {
    return Map.of(
        "id",
        "plain-cream",
        "title",
        "Plain cream",
        "lines",
        List.of(Map.of("ingredient", "cream-heavy", "quantity", "500 g")),
        "yield",
        yield);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("tamis.plugin.pans.Given#seeds")
  void cream_for_so_many_cakes_reaches_for_so_many(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double diameter = random.nextDouble(10, 40);
    double layer = random.nextDouble(2, 6);
    int layers = random.nextInt(1, 5);
    int cakes = random.nextInt(1, 20);
    double rest = random.nextDouble(0.01, 0.99);
    Map<String, Object> input = cake();
    input.put("cake", Given.round(diameter, layers, layer));
    input.put("density", "0.5 g/ml");
    double one = result(input).grams();
    input.put("cream", one * (cakes + rest) + " g");
    Reach many = result(input).reach();
    assertThat(many.wholeCakes()).isEqualTo(cakes);
    assertThat(many.leftGrams()).isCloseTo(one * rest, Percentage.withPercentage(1e-6));
    input.put("cream", one * random.nextDouble(0.2, 2.5) + " g");
    Reach all = result(input).reach();
    double thick = 0.6 * all.thicknessFactor();
    double high = layers * layer + (layers - 1) * 0.5 * all.thicknessFactor() + thick;
    double outer = Math.PI / 4 * Math.pow(diameter + 2 * thick, 2) * high;
    double inner = Math.PI / 4 * diameter * diameter * layers * layer;
    assertThat(outer - inner).isCloseTo(all.millilitres(), Percentage.withPercentage(1e-6));
  }

  @Test
  void a_coat_more_than_thrice_as_thick_is_not_proposed() {
    Map<String, Object> input = cake();
    input.put("density", "0.5 g/ml");
    input.put("cream", "20 kg");
    assertThat(result(input).reach().thicknessFactor()).isNull();
  }

  @Test
  void tiers_stand_on_each_other_and_each_is_coated() {
    Map<String, Object> input = cake();
    input.remove("cake");
    input.put("tiers", List.of(Given.round(30, 3, 3), Given.round(20, 3, 3)));
    Coating.Result result = result(input);
    assertThat(result.heightCm()).isEqualTo(2 * (9 + 1 + 0.6), within(1e-9));
    assertThat(result.widthCm()).isEqualTo(31.2, within(1e-9));
    assertThat(result.tiers().stream().mapToDouble(CoatedTier::millilitres).sum())
        .isEqualTo(result.millilitres().total(), within(1e-6));
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .containsExactly("coated-under-tiers");
  }

  @Test
  void cream_between_the_layers_of_a_single_layer_is_remarked() {
    Map<String, Object> input = cake();
    input.put("cake", Given.round(20, 1, 5));
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .containsExactly("between-not-used");
  }

  @ParameterizedTest(name = "{0} of {1}: {2}")
  @CsvSource({
    "top, 9.1 cm, inconsistent /top",
    "side, 11 cm, inconsistent /side",
    "between, 10 cm, inconsistent /between",
    "top, -1 mm, out-of-bounds /top",
    "top, 5 g, wrong-dimension /top",
    "side, 5, no-unit /side",
  })
  void a_coat_that_cannot_be_is_refused(String name, String thickness, String told) {
    Map<String, Object> input = cake();
    input.put(name, thickness);
    assertThat(Given.told(() -> read(input))).containsExactly(told);
  }

  @Test
  void cream_without_density_and_half_an_overrun_are_refused_together() {
    Map<String, Object> input = cake();
    input.put("cream", "800 g");
    input.put("mixDensity", "1 g/ml");
    assertThat(Given.told(() -> read(input)))
        .containsExactly("missing /overrunPercent", "no-density /cream");
  }

  @Test
  void a_cake_and_tiers_are_not_given_together() {
    Map<String, Object> input = cake();
    input.put("tiers", List.of(Given.round(30, 3, 3)));
    assertThat(Given.told(() -> read(input))).anyMatch(told -> told.startsWith("exactly-one"));
  }

  /** Three layers of 3 cm, 20 cm wide, with 6 mm around and 5 mm between. */
  private static Map<String, Object> cake() {
    Map<String, Object> input = new HashMap<>();
    input.put("cake", Given.round(20, 3, 3));
    input.put("top", "6 mm");
    input.put("side", "6 mm");
    input.put("between", "5 mm");
    return input;
  }
}
