package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.nutrition.Feeding.answer;
import static tamis.plugin.nutrition.Feeding.asked;
import static tamis.plugin.nutrition.Feeding.read;
import static tamis.plugin.nutrition.Feeding.result;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.note.Remark;

/** What labels print: rounding, daily values, tolerances, servings, mandatory figures. */
class NutritionLabelTest {
  /** 0.4 g of 20 g would be 2 %; nobody understands "Saturated Fat 0 g, 2 %". */
  @ParameterizedTest(name = "{0} of {1} is told as {2}, {3} %")
  @CsvSource({
    "saturates, 0.4, 0 g, 0",
    "cholesterolMg, 1.9, 0 mg, 0",
    "fat, 0.49, 0 g, 0",
    "fibre, 0.6, less than 1 g, 2",
    "saturates, 0.5, 0.5 g, 3"
  })
  void what_is_declared_as_nothing_is_no_part_of_a_day(
      String figure, double value, String text, double percent) {
    Map<String, Object> input = Map.of("declare", Map.of(figure, value), "regime", "US");
    Declared declared = result(input).declared().get(LabelFigure.named(figure));
    assertThat(declared.text()).isEqualTo(text);
    assertThat(declared.percent()).isEqualTo(percent);
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
  void a_gap_too_small_to_change_what_is_printed_is_no_gap_on_the_label() {
    // trans fat of flour is not told, but 0.98 g of fat hold no more than that
    Map<String, Object> formula =
        Bakery.formula("paste", Map.of(), "all-purpose-flour 10 g", "water 90 g");
    Nutrition.Result result = result(asked(formula, "US", "portion", "50 g"));
    assertThat(result.known().get(LabelFigure.TRANS)).isLessThan(1);
    assertThat(result.incomplete()).contains("/per100g/trans").doesNotContain("/declared/trans");
    assertThat(result.declared().get(LabelFigure.TRANS).text()).isEqualTo("0 g");
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
}
