package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
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
  protected Plugin plugin() {
    return new NutritionPlugin();
  }

  @Override
  protected Kitchen kitchen() {
    return new Bakery()
        .with(Bakery.formula("fudge", Map.of("pieces", 10), "fat-block 200 g", "own-water 800 g"))
        .with(
            Bakery.formula(
                "caramel",
                Map.of("makeUpLoss", "2 %", "bakeLoss", "10 %"),
                "sugar-granulated 300 g",
                "milk-whole 300 g",
                "butter-unsalted 100 g"))
        .with(
            Bakery.formula(
                "slice",
                Map.of("portions", 12, "bakeLoss", "8 %"),
                "all-purpose-flour 400 g",
                "butter-unsalted 200 g",
                "egg 100 g",
                "=caramel 300 g",
                "walnut 50 g",
                "oil-sunflower 500 g remains 0.1",
                "salt as needed"))
        .with(Bakery.formula("flat", Map.of(), "sugar-granulated 80 g", "mystery 20 g"))
        .with(Bakery.formula("punch", Map.of(), "rum 100 g", "water 900 g"))
        .with(Bakery.formula("lozenge", Map.of("density", "1.2 g/ml"), "sugar-granulated 100 g"))
        .withIngredient(
            ingredient(
                "fat-block",
                Map.of(
                    "fat",
                    100,
                    "vitaminCMg",
                    100,
                    "protein",
                    0,
                    "carbohydrate",
                    0,
                    "water",
                    0,
                    "sodiumMg",
                    400)))
        .withIngredient(
            ingredient(
                "own-water",
                Map.of(
                    "fat",
                    0,
                    "protein",
                    0,
                    "carbohydrate",
                    0,
                    "water",
                    100,
                    "sodiumMg",
                    0,
                    "vitaminCMg",
                    0)))
        .withIngredient(ingredient("mystery", Map.of("carbohydrate", 50)))
        .open();
  }

  private static Map<String, Object> ingredient(String id, Map<String, ?> per100g) {
    return Map.of("id", id, "names", Map.of("en", List.of(id)), "per100g", per100g);
  }

  private static Map<String, Object> asked(Object formula, String regime, Object... more) {
    Map<String, Object> input = new HashMap<>();
    input.put("formula", formula);
    input.put("regime", regime);
    for (int i = 0; i < more.length; i += 2) {
      input.put((String) more[i], more[i + 1]);
    }
    return input;
  }

  @ParameterizedTest(name = "{0} {1} {2} is {3} ({4})")
  @CsvFileSource(resources = "/label-rounding.csv", numLinesToSkip = 1)
  void declared_figures_match_the_printed_rules(
      String regime, String figure, double value, String text) {
    Map<String, Object> input = Map.of("declare", Map.of(figure, value), "regime", regime);
    Declared declared = result(input).declared().get(LabelFigure.named(figure));
    assertThat(declared.text()).isEqualTo(text);
    assertThat(declared.lessThan()).isEqualTo(text.startsWith("less") || text.startsWith("<"));
    assertThat(declared.complete()).isTrue();
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvFileSource(resources = "/daily-values.csv", numLinesToSkip = 1)
  void daily_values_are_those_of_2016(String figure, double value) {
    LabelFigure of = LabelFigure.named(figure);
    assertThat(of).isNotNull();
    assertThat(new Label(LabelRegime.UNITED_STATES).rule(of).number("reference")).isEqualTo(value);
  }

  @ParameterizedTest(name = "{0} {1} is {2} % of the daily value")
  @CsvFileSource(resources = "/sample-label.csv", numLinesToSkip = 1)
  void percentages_match_the_sample_label(String figure, double value, double percent) {
    Map<String, Object> input = Map.of("declare", Map.of(figure, value), "regime", "US");
    assertThat(result(input).declared().get(LabelFigure.named(figure)).percent())
        .isEqualTo(percent);
  }

  @ParameterizedTest
  @CsvSource({
    "energyKj,8400,100",
    "energyKcal,2000,100",
    "fat,35,50",
    "saturates,10,50",
    "carbohydrate,26,10",
    "sugars,9,10",
    "protein,5,10",
    "salt,1.5,25"
  })
  void reference_intakes_are_those_of_annex_XIII(String figure, double value, double percent) {
    Map<String, Object> input = Map.of("declare", Map.of(figure, value), "regime", "EU");
    assertThat(result(input).declared().get(LabelFigure.named(figure)).percent())
        .isEqualTo(percent);
  }

  @ParameterizedTest
  @CsvSource({
    "EU,fat,8,6.5,9.5",
    "EU,fat,20,16,24",
    "EU,fat,50,42,58",
    "EU,saturates,3,2.2,3.8",
    "EU,salt,1,0.625,1.375",
    "EU,protein,5,3,7",
    "EU,sugars,45,37,53"
  })
  void tolerances_stand_beside_declared_figures(
      String regime, String figure, double value, double low, double high) {
    Map<String, Object> input = Map.of("declare", Map.of(figure, value), "regime", regime);
    Declared declared = result(input).declared().get(LabelFigure.named(figure));
    assertThat(declared.toleranceLow()).isEqualTo(low, within(1e-9));
    assertThat(declared.toleranceHigh()).isEqualTo(high, within(1e-9));
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
  void a_gap_too_small_to_change_what_is_printed_is_no_gap_on_the_label() {
    // trans fat of flour is not told, but 0.98 g of fat hold no more than that
    Map<String, Object> formula =
        Bakery.formula("paste", Map.of(), "all-purpose-flour 10 g", "water 90 g");
    Nutrition.Result result = result(asked(formula, "US", "portion", "50 g"));
    assertThat(result.known().get(LabelFigure.TRANS)).isLessThan(1);
    assertThat(result.incomplete()).contains("/per100g/trans").doesNotContain("/declared/trans");
    assertThat(result.declared().get(LabelFigure.TRANS).text()).isEqualTo("0 g");
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

  @ParameterizedTest(name = "{0} are eaten {1} g at a time ({2})")
  @CsvFileSource(resources = "/reference-amounts.csv", numLinesToSkip = 1)
  void amounts_customarily_eaten_are_those_of_2016(String category, Double grams, String measure) {
    tamis.engine.table.Row row = FigureTables.SERVINGS.row(category);
    assertThat(row).isNotNull();
    assertThat(row.numberOrNull("grams")).isEqualTo(grams);
    assertThat(row.textOrNull("measure")).isEqualTo(measure);
  }

  @ParameterizedTest(name = "units of {0} g make a serving of {1} units")
  @CsvSource({
    "10,6",
    "20,3",
    "27.5,2",
    "30,2",
    "36,2",
    "37,1",
    "55,1",
    "109,1",
    "150,1",
    "220,0.25"
  })
  void a_serving_of_things_in_units_is_whole_units(double unit, double units) {
    Serving serving = Serving.of(FigureTables.SERVINGS.row("scones"), unit, null);
    assertThat(serving.units()).isEqualTo(units);
    assertThat(serving.grams()).isEqualTo(unit * units, within(1e-9));
    assertThat(serving.twoColumns()).isEqualTo(unit == 150);
  }

  @Test
  void amounts_in_spoons_need_a_density() {
    assertThat(result(asked("lozenge", "US", "category", "icings")).serving().grams())
        .isEqualTo(36, within(1e-9));
    assertThat(answer(read(asked("caramel", "US", "category", "icings"))).remarks())
        .extracting(Remark::code)
        .contains("serving-not-weighed", "no-serving");
  }

  @Test
  void a_US_label_shows_every_mandatory_figure() {
    assertThat(result(asked("slice", "US", "portion", "55 g")).label())
        .filteredOn(Nutrition.LabelLine::mandatory)
        .extracting(Nutrition.LabelLine::name)
        .containsExactly(
            "Calories",
            "Total Fat",
            "Saturated Fat",
            "Trans Fat",
            "Cholesterol",
            "Sodium",
            "Total Carbohydrate",
            "Dietary Fiber",
            "Total Sugars",
            "Added Sugars",
            "Protein",
            "Vitamin D",
            "Calcium",
            "Iron",
            "Potassium");
  }

  @Test
  void an_EU_label_shows_every_mandatory_figure_and_the_portion_beside_it() {
    Nutrition.Result result = result(asked("slice", "EU"));
    assertThat(result.label())
        .filteredOn(Nutrition.LabelLine::mandatory)
        .extracting(line -> line.figure().toString())
        .containsExactly(
            "energyKj",
            "energyKcal",
            "fat",
            "saturates",
            "carbohydrate",
            "sugars",
            "protein",
            "salt");
    assertThat(result.portions()).isEqualTo(12, within(1e-9));
    assertThat(result.declaredPerPortion()).containsKey(LabelFigure.FAT);
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
  void more_loss_than_water_is_refused() {
    assertFault(() -> result(asked("slice", "EU", "loss", 0.6)), FaultCode.IMPOSSIBLE, "/loss");
  }

  @Test
  void a_loss_of_everything_is_refused() {
    assertFault(
        () -> read(asked("slice", "EU", "loss", "100 %")), FaultCode.OUT_OF_BOUNDS, "/loss");
  }

  @Test
  void a_portion_of_nothing_is_refused() {
    assertFault(
        () -> read(asked("slice", "EU", "portion", "0 g")), FaultCode.OUT_OF_BOUNDS, "/portion");
  }

  @Test
  void more_than_all_cannot_be_left() {
    assertFault(
        () ->
            read(
                asked(
                    "slice",
                    "EU",
                    "retention",
                    List.of(Map.of("nutrient", "ironMg", "part", "120 %")))),
        FaultCode.OUT_OF_BOUNDS,
        "/retention/0/part");
  }

  @Test
  void an_unknown_regime_or_category_is_refused() {
    assertFault(() -> read(asked("slice", "Atlantis")), FaultCode.NOT_ALLOWED, "/regime");
    assertFault(
        () -> result(asked("slice", "US", "category", "pebbles")),
        FaultCode.NOT_ALLOWED,
        "/category");
  }

  @Test
  void a_figure_that_the_label_does_not_show_is_refused() {
    assertFault(
        () -> result(Map.of("declare", Map.of("sodiumMg", 5), "regime", "EU")),
        FaultCode.NOT_ALLOWED,
        "/declare/sodiumMg");
    assertFault(
        () -> read(Map.of("declare", Map.of("fat", -1), "regime", "EU")),
        FaultCode.OUT_OF_BOUNDS,
        "/declare/fat");
    assertFault(() -> read(Map.of("regime", "EU")), FaultCode.EXACTLY_ONE, "");
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

  private static void assertFault(
      org.assertj.core.api.ThrowableAssert.ThrowingCallable call, FaultCode code, String pointer) {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(call)
        .satisfies(
            refusal ->
                assertThat(refusal.faults())
                    .extracting(Fault::code, Fault::pointer)
                    .contains(org.assertj.core.groups.Tuple.tuple(code, pointer)));
  }
}
