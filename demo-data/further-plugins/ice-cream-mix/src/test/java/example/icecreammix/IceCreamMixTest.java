package example.icecreammix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class IceCreamMixTest extends CalculationContract<IceCreamMix.Input, IceCreamMix.Result> {
  @Override
  protected Calculation<IceCreamMix.Input, IceCreamMix.Result> calculation() {
    return new IceCreamMix();
  }

  @Override
  protected Plugin plugin() {
    return new IceCreamMixPlugin();
  }

  private static IceCreamMix.Input mix(String text, double serving) {
    List<IceCreamMix.Portion> portions =
        Arrays.stream(text.split(", "))
            .map(part -> part.split(" "))
            .map(
                part ->
                    new IceCreamMix.Portion(
                        IngredientRef.parse(part[0]), Mass.ofGrams(Double.parseDouble(part[1]))))
            .toList();
    return new IceCreamMix.Input(portions, null, null, Temperature.ofCelsius(serving), null);
  }

  private List<String> codes(Answer<?> answer) {
    return answer.remarks().stream().map(Remark::code).toList();
  }

  @ParameterizedTest(name = "{0}: {6} °C ({7})")
  @CsvFileSource(resources = "/ice-cream-mix.csv", numLinesToSkip = 1)
  void the_mix_matches_the_worked_examples(
      String mix,
      double grams,
      double solids,
      double fat,
      double msnf,
      double equivalent,
      double freezing,
      String source) {
    IceCreamMix.Result result = answer(mix(mix, -12)).result();
    assertThat(result.grams()).isCloseTo(grams, within(1e-9));
    assertThat(result.totalSolidsPercent()).isCloseTo(solids, within(0.3));
    assertThat(result.fatPercent()).isCloseTo(fat, within(0.1));
    assertThat(result.milkSolidsNotFatPercent()).isCloseTo(msnf, within(0.2));
    assertThat(result.sucroseEquivalentPer100gWater()).isCloseTo(equivalent, within(0.2));
    assertThat(result.freezingCelsius()).isCloseTo(freezing, within(0.02));
  }

  @Test
  void more_ice_the_colder_it_is_served() {
    String mix = "milk-whole 580, cream-heavy 220, sugar-granulated 160, milk-powder-skim 40";
    double last = -1;
    for (double celsius : new double[] {-2, -4, -6, -8, -10, -12, -14, -16, -18, -20}) {
      Double frozen = answer(mix(mix, celsius)).result().frozenWaterPercent();
      assertThat(frozen).isGreaterThanOrEqualTo(last).isBetween(0.0, 100.0);
      last = frozen;
    }
    assertThat(answer(mix(mix, -12)).result().frozenWaterPercent()).isBetween(65.0, 78.0);
  }

  @Test
  void plain_water_freezes_at_nought_and_wholly() {
    IceCreamMix.Result result = answer(mix("water 100", -12)).result();
    assertThat(result.freezingCelsius()).isCloseTo(0, within(0.01));
    assertThat(result.frozenWaterPercent()).isGreaterThan(99.9);
  }

  @Test
  void egg_brings_a_caution_and_a_lean_mix_its_remarks() {
    assertThat(codes(answer(mix("milk-whole 700, egg-yolk 100, sugar-granulated 50", -12))))
        .contains("raw-egg", "total-solids-low", "fat-low", "sweetener-low");
  }

  @Test
  void milk_that_cannot_be_told_is_absent() {
    Answer<IceCreamMix.Result> answer = answer(mix("water 100, malted-milk-powder 20", -12));
    assertThat(answer.result().milkSolidsNotFatGrams()).isNull();
    assertThat(codes(answer)).contains("milk-solids-not-known");
  }

  @Test
  void a_mix_without_milk_is_not_called_poor_in_milk() {
    assertThat(codes(answer(mix("water 600, sugar-granulated 200, oil-coconut 90", -12))))
        .doesNotContain("milk-solids-not-fat-low", "raw-egg", "pasteurise-and-cool");
  }

  @Test
  void a_formula_given_whole_is_told_as_its_bill() {
    IceCreamMix.Result result = answer(calculation().examples().get(1)).result();
    assertThat(result.grams()).isCloseTo(2000, within(1e-6));
    assertThat(result.shares()).hasSize(5);
  }

  @Test
  void what_cooking_drives_off_is_taken_from_the_water() {
    IceCreamMix.Result plain = answer(cooked(0)).result();
    Answer<IceCreamMix.Result> answer = answer(cooked(0.1));
    assertThat(answer.result().grams()).isCloseTo(900, within(1e-6));
    assertThat(answer.result().waterGrams()).isCloseTo(plain.waterGrams() - 100, within(1e-6));
    assertThat(answer.result().fatGrams()).isCloseTo(plain.fatGrams(), within(1e-6));
    assertThat(answer.result().freezingCelsius()).isLessThan(plain.freezingCelsius());
    assertThat(codes(answer)).contains("cooked-in");
  }

  private static IceCreamMix.Input cooked(double loss) {
    Formula whole = java.util.Objects.requireNonNull(
        java.util.Objects.requireNonNull(new IceCreamMix().examples().get(1).formula()).object());
    Yield yield =
        new Yield(null, null, null, null, new Fraction(loss), null, List.of(), null, null);
    Formula lossy = new Formula("cooked", "Cooked", whole.measures(), whole.lines(), yield,
        List.of(), List.of(), List.of(), List.of(), null, null);
    return new IceCreamMix.Input(
        List.of(), FormulaRef.of(lossy), To.ofFactor(1), Temperature.ofCelsius(-12), null);
  }

  @Test
  void salt_and_alcohol_count() {
    double plain = answer(mix("water 600, sugar-granulated 150", -12)).result().freezingCelsius();
    double salted = answer(mix("water 600, sugar-granulated 150, salt 3", -12)).result().freezingCelsius();
    double rum = answer(mix("water 600, sugar-granulated 150, rum 30", -12)).result().freezingCelsius();
    assertThat(plain - salted).isBetween(0.25, 0.5);
    assertThat(plain - rum).isBetween(0.5, 1.0);
  }

  @Test
  void unknown_sugars_leave_the_freezing_point_absent() {
    Answer<IceCreamMix.Result> answer = answer(mix("coconut-milk 400, sugar-granulated 80", -12));
    assertThat(answer.result().freezingCelsius()).isNull();
    assertThat(answer.result().sugarGrams()).isNull();
  }

  @Test
  void an_ingredient_of_unknown_water_is_refused() {
    IceCreamMix.Input input = mix("milk-whole 500, coffee-ground 60", -12);
    assertThatThrownBy(() -> calculation().calculate(input, kitchen()))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("is not known");
  }

  @Test
  void a_mix_without_water_is_refused() {
    IceCreamMix.Input input = mix("fructose 100", -12);
    assertThatThrownBy(() -> calculation().calculate(input, kitchen()))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("no water");
  }

  @Test
  void sugars_are_cited_in_the_same_order_at_every_start() {
    assertThat(answer(mix("egg-yolk 100, water 500", -12)).sources())
        .filteredOn(cited -> cited.table().equals("ice-cream-solutes"))
        .extracting(cited -> cited.row())
        .containsSubsequence("sucrose", "glucose", "fructose", "lactose", "maltose", "galactose");
  }

  @Test
  void neither_mix_nor_formula_is_refused() {
    assertThatThrownBy(() -> result(Map.of("serving", "-12 °C"))).isInstanceOf(Refusal.class);
  }
}
