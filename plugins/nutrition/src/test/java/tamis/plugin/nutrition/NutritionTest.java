package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.nutrition.Feeding.asked;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class NutritionTest extends CalculationContract<Nutrition.Input, Nutrition.Result> {
  @Override
  protected Calculation<Nutrition.Input, Nutrition.Result> calculation() {
    return new Nutrition();
  }

  @Override
  protected Kitchen kitchen() {
    return Feeding.kitchen();
  }

  @Override
  protected Plugin plugin() {
    return new NutritionPlugin();
  }

  @Test
  void lost_water_changes_no_gram_of_fat_but_what_100_g_hold() {
    // 1000 g raw, yield 0.88, fat 200 g, vitamin 200 mg of which 75 % are left
    Nutrition.Result result =
        result(
            asked(
                "fudge",
                "EU",
                "loss",
                0.12,
                "retention",
                List.of(Map.of("nutrient", "vitaminCMg", "part", "75 %"))));
    assertThat(result.finishedGrams()).isEqualTo(880, within(1e-9));
    assertThat(result.per100g().fat()).isEqualTo(22.727, within(0.0005));
    assertThat(result.per100g().others().get(LabelFigure.VITAMIN_C))
        .isEqualTo(17.045, within(0.0005));
    assertThat(result.perBatch().fat()).isEqualTo(200, within(1e-9));
    assertThat(result.perBatch().water()).isEqualTo(680, within(1e-9));
    assertThat(result.per100g().salt()).isEqualTo(800 * 2.5 / 1000 / 8.8, within(1e-9));
  }

  @Test
  void a_measured_mass_gives_the_loss() {
    // 426.92 g of batter bake to 350 g: 18.02 % are lost
    Map<String, Object> formula =
        Bakery.formula(
            "cake", Map.of("mass", "350 g"), "all-purpose-flour 200 g", "water 226.92 g");
    assertThat(result(asked(formula, "EU")).finishedGrams()).isEqualTo(350.0);
    assertThat(result(asked(formula, "EU", "loss", "18.02 %")).finishedGrams())
        .isEqualTo(350, within(0.02));
  }

  @Test
  void water_and_solids_make_up_the_whole_before_and_after_baking() {
    for (String loss : List.of("0 %", "8 %", "20 %")) {
      Figures all = result(asked("slice", "US", "loss", loss)).per100g();
      double sum = all.water() + all.protein() + all.fat() + all.carbohydrate() + all.ash();
      assertThat(sum).as("at %s", loss).isEqualTo(100, within(0.6));
    }
  }

  @Test
  void nutrients_of_a_batch_are_the_sum_of_its_lines() {
    // the caramel gives up 2 % to its bowl and 10 % to the air: 300 g finished are of
    // 300 / 0.9 = 333.33 g in the bowl, of 700 g that hold 300 sugar, 300 milk, 100 butter
    double part = 300 / 0.9 / 700;
    double fat = 4 * 0.98 + 2 * 81.11 + 9.51 + part * (3 * 3.25 + 81.11 + 0) + 0.5 * 65.21 + 50;
    Nutrition.Result result = result(asked("slice", "US"));
    assertThat(result.perBatch().fat()).isEqualTo(fat, within(0.01));
    double mixed = 400 + 200 + 100 + 300 + 50 + 50;
    assertThat(result.finishedGrams()).isEqualTo(mixed * 0.92, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 3, 250})
  void figures_of_100_g_do_not_depend_on_the_size(double factor) {
    Figures once = result(asked("slice", "EU")).per100g();
    Figures scaled = result(asked("slice", "EU", "to", Map.of("factor", factor))).per100g();
    assertThat(scaled.fat()).isEqualTo(once.fat(), within(1e-9));
    assertThat(scaled.energyKj()).isEqualTo(once.energyKj(), within(1e-6));
    assertThat(scaled.sodiumMg()).isEqualTo(once.sodiumMg(), within(1e-6));
    assertThat(result(asked("slice", "EU", "to", Map.of("factor", factor))).portionGrams())
        .isEqualTo(result(asked("slice", "EU")).portionGrams(), within(1e-9));
  }

  @Test
  void nesting_does_not_change_the_sum() {
    Map<String, Object> flat =
        Bakery.formula("a", Map.of(), "all-purpose-flour 100 g", "milk-whole 60 g", "egg 40 g");
    Map<String, Object> inner = Bakery.formula("b", Map.of(), "milk-whole 60 g", "egg 40 g");
    Map<String, Object> outer = Bakery.formula("c", Map.of(), "all-purpose-flour 100 g");
    outer.put(
        "lines",
        List.of(
            Map.of("ingredient", "all-purpose-flour", "quantity", "100 g"),
            Map.of("formula", inner, "quantity", "100 g")));
    assertThat(result(asked(outer, "EU")).per100g().protein())
        .isEqualTo(result(asked(flat, "EU")).per100g().protein(), within(1e-9));
    assertThat(result(asked(outer, "EU")).known()).isEqualTo(result(asked(flat, "EU")).known());
  }

  @Test
  void what_is_not_known_is_not_zero() {
    Nutrition.Result result = result(asked("flat", "EU"));
    assertThat(result.known().get(LabelFigure.FAT)).isEqualTo(0.8, within(1e-9));
    assertThat(result.known().get(LabelFigure.CARBOHYDRATE)).isEqualTo(0.8, within(1e-9));
    assertThat(result.incomplete()).contains("/per100g/fat", "/declared/fat");
    assertThat(result.declared().get(LabelFigure.FAT).complete()).isFalse();
    assertThat(result.declared().get(LabelFigure.FAT).text()).isEqualTo("0 g or more");
    assertThat(result.gaps())
        .filteredOn(gap -> gap.figure() == LabelFigure.FAT)
        .extracting(Nutrition.Gap::ingredients)
        .containsExactly(List.of("mystery"));
    Map<String, Object> unknown = Bakery.formula("u", Map.of(), "mystery 10 g");
    assertThat(result(asked(unknown, "EU")).per100g().fat()).isNull();
    assertThat(result(asked(unknown, "EU")).label())
        .filteredOn(line -> line.figure() == LabelFigure.FAT)
        .extracting(Nutrition.LabelLine::text)
        .containsExactly("not known");
  }

  @Test
  void carbohydrate_has_fibre_in_the_US_and_none_in_the_EU() {
    Map<String, Object> formula = Bakery.formula("f", Map.of(), "all-purpose-flour 100 g");
    assertThat(result(asked(formula, "US")).per100g().carbohydrate()).isEqualTo(76.31);
    assertThat(result(asked(formula, "EU")).per100g().carbohydrate())
        .isEqualTo(76.31 - 2.7, within(1e-9));
    assertThat(result(asked(formula, "UK")).declared())
        .isEqualTo(result(asked(formula, "EU")).declared());
  }

  @Test
  void energy_goes_three_ways_that_are_kept_apart() {
    Map<String, Object> formula = Bakery.formula("f", Map.of(), "all-purpose-flour 100 g");
    // protein 10.33, fat 0.98, carbohydrate 76.31, fibre 2.7
    Figures eu = result(asked(formula, "EU")).per100g();
    assertThat(eu.energyKcal())
        .isEqualTo(4 * 10.33 + 9 * 0.98 + 4 * (76.31 - 2.7) + 2 * 2.7, within(1e-9));
    assertThat(eu.energyKj())
        .isEqualTo(17 * 10.33 + 37 * 0.98 + 17 * (76.31 - 2.7) + 8 * 2.7, within(1e-9));
    Figures us = result(asked(formula, "US")).per100g();
    assertThat(us.energyKcal()).isEqualTo(4 * 10.33 + 9 * 0.98 + 4 * 76.31, within(1e-9));
    Figures own = result(asked(formula, "US", "energy", "specific")).per100g();
    assertThat(own.energyKcal()).isEqualTo(364, within(3.0)).isNotEqualTo(us.energyKcal());
    assertThat(us.tableEnergyKcal()).isEqualTo(364);
  }

  @Test
  void alcohol_is_lost_by_the_way_it_is_cooked() {
    double raw = result(asked("punch", "EU")).perBatch().alcohol();
    assertThat(result(asked("punch", "EU", "alcohol", "flamed")).perBatch().alcohol())
        .isEqualTo(raw * 0.75, within(1e-9));
    assertThat(result(asked("punch", "EU", "alcohol", "cooked-2-h-30")).perBatch().alcohol())
        .isEqualTo(raw * 0.05, within(1e-9));
  }

  @Test
  void added_sugars_are_told_from_sugars_by_ingredient() {
    Map<String, Object> formula =
        Bakery.formula("f", Map.of(), "sugar-granulated 100 g", "milk-whole 100 g");
    Figures figures = result(asked(formula, "US")).perBatch();
    assertThat(figures.addedSugars()).isEqualTo(99.80, within(1e-9));
    assertThat(figures.sugars()).isEqualTo(99.80 + 5.05, within(1e-9));
  }

  @Test
  void a_formula_wholly_in_percent_is_taken_by_100_g_of_flour() {
    Map<String, Object> formula =
        Bakery.formula("percent", Map.of(), "bread-flour 100 %", "water 60 %", "salt 2 %");
    assertThat(result(asked(formula, "EU")).finishedGrams()).isEqualTo(162, within(1e-9));
    assertThat(answer(read(asked(formula, "EU"))).remarks())
        .extracting(Remark::code)
        .contains("size-assumed");
    assertThat(result(asked(formula, "EU", "to", Map.of("mass", "1 kg"))).per100g().salt())
        .isEqualTo(result(asked(formula, "EU")).per100g().salt(), within(1e-9));
  }

  @Test
  void a_caution_stands_beside_every_answer() {
    for (Map<String, ?> input :
        List.of(asked("slice", "US"), Map.of("declare", Map.of("fat", 1), "regime", "EU"))) {
      assertThat(answer(read(input)).remarks())
          .filteredOn(r -> r.kind() == Remark.Kind.CAUTION)
          .extracting(Remark::code)
          .contains("figures-are-estimates");
    }
  }
}
