package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Stage;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class IntakeTest extends CalculationContract<Intake.Input, Intake.Result> {
  @Override
  protected Calculation<Intake.Input, Intake.Result> calculation() {
    return new Intake();
  }

  @Override
  protected Plugin plugin() {
    return new IntakePlugin();
  }

  private Intake.Result text(String text) {
    return result(Map.of("text", text));
  }

  private IntakeLine line(String text) {
    return text(text).lines().get(0);
  }

  @Test
  void the_two_lines_of_the_contract_become_a_formula() {
    Intake.Result result = text("2 1/4 cups all-purpose flour, sifted\n1/2 lb. butter");
    IntakeLine flour = result.lines().get(0);
    assertThat(flour.quantity()).isEqualTo(2.25);
    assertThat(flour.unit()).isEqualTo("cup");
    assertThat(flour.ingredient()).isEqualTo("all-purpose-flour");
    assertThat(flour.asWritten()).isEqualTo("all-purpose flour");
    assertThat(flour.state()).isNull();
    assertThat(flour.preparation()).isEqualTo("sifted");
    assertThat(flour.grams()).isEqualTo(281.25, within(0.01));
    assertThat(result.lines().get(1).grams()).isEqualTo(226.796, within(0.001));
    assertThat(result.unresolved()).isEmpty();
    assertThat(result.formula()).isNotNull();
  }

  @Test
  void the_formula_is_one_that_can_be_made() {
    Intake.Result result = text("Cake\n2 cups flour\n3 eggs\nsalt to taste\nBake 30 minutes.");
    FormulaRef formula = FormulaRef.of(Objects.requireNonNull(result.formula()));
    assertThat(kitchen().batch(formula, null).root().mass().typical()).isEqualTo(400, within(0.1));
  }

  /** 100 g a cup sifted, 120 g unsifted: USDA SR28, NDB 19336. */
  @ParameterizedTest(name = "{0} weighs {1} g")
  @CsvSource(
      delimiter = '|',
      value = {"1 cup sifted powdered sugar|100", "1 cup powdered sugar, sifted|120"})
  void sifted_before_measuring_weighs_less_than_sifted_after(String text, double grams) {
    assertThat(line(text).grams()).isEqualTo(grams, within(0.01));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "butter the size of an egg|no measure",
        "1 cup butter or margarine|leaves open",
        "2 cups double cream|several foods",
        "2 tbsp cornflour|several foods",
        "1 cup moonberry flakes|no ingredient goes by",
        "a little milk|no amount",
        "1 jar honey|what one jar holds",
        "1,250 g flour|decimal mark",
        "3-2 eggs|backwards",
        "0 cups flour|is nothing",
        "1/0 cup milk|fraction over zero",
        "99999999999999 cups flour|a number of 14 characters",
        "2 cups all-purpose flour or|ends with `or`",
        "salt and pepper|more than one",
      })
  void what_is_not_told_for_certain_is_not_guessed(String text, String why) {
    Intake.Result result = text(text);
    assertThat(result.formula()).isNull();
    assertThat(result.unresolved()).hasSize(1);
    assertThat(result.unresolved().get(0).why()).contains(why);
    assertThat(result.lines().get(0).confidence()).isLessThanOrEqualTo(0.5);
  }

  @Test
  void the_language_decides_what_a_name_means_that_differs_by_place() {
    Map<String, Object> asked = Map.of("text", "300 ml double cream", "language", "en-GB");
    assertThat(result(asked).lines().get(0).ingredient()).isEqualTo("cream-double");
    Map<String, Object> cups = Map.of("text", "1 cup cornflour", "measures", "uk");
    assertThat(result(cups).lines().get(0).ingredient()).isEqualTo("cornstarch");
  }

  @Test
  void a_weight_in_brackets_that_disagrees_is_told() {
    assertThat(line("1 cup (125 g) all-purpose flour").confidence()).isEqualTo(1);
    assertThat(line("1 cup (300 g) all-purpose flour").confidence()).isLessThanOrEqualTo(0.6);
    assertThat(answer(read(Map.of("text", "1 cup (300 g) all-purpose flour"))).remarks())
        .anyMatch(remark -> remark.message().contains("are not the same"));
  }

  @Test
  void a_second_ingredient_on_a_line_is_told() {
    Intake.Result result = text("1 tsp baking soda in 2 tablespoons boiling water");
    assertThat(result.formula()).isNotNull();
    assertThat(result.unresolved().get(0).why()).contains("2 tablespoons boiling water");
  }

  @Test
  void every_line_that_is_not_blank_is_somewhere_and_spans_are_exact() {
    String page =
        """
        Sunday buns \t
        Makes 12

        For the dough:
          2 cups bread flour
        \u00a0• 1 tsp salt
        a piece of ginger
        1 glass of something

        Method
        1. Mix and knead for 10 minutes.
        2. Bake at 200 °C for 20 to 25 minutes.
        They are better the day after.
        """;
    Intake.Result result = text(page);
    String left = page;
    for (IntakeLine line : result.lines()) {
      assertThat(page.substring(line.start(), line.end())).isEqualTo(line.text());
      left = left.replace(line.text(), "");
    }
    for (Passage passage : result.passages()) {
      assertThat(page.substring(passage.start(), passage.end())).isEqualTo(passage.text());
      left = left.replace(passage.text(), "");
    }
    assertThat(left.replace('\u00a0', ' ')).isBlank();
    assertThat(result.unresolved()).hasSize(2);
  }

  @Test
  void steps_become_stages_with_station_time_and_temperature() {
    Intake.Result result = text("Buns\n2 cups bread flour\nBake at 350°F for 25 to 30 minutes.");
    var stage = Objects.requireNonNull(result.formula()).stages().get(0);
    assertThat(stage.station()).isEqualTo("oven");
    assertThat(Objects.requireNonNull(stage.duration()).minutes()).isEqualTo(27.5);
    assertThat(Objects.requireNonNull(stage.target()).low()).isEqualTo("350 °F");
  }

  @Test
  void parts_of_a_page_become_stages_of_their_lines() {
    Intake.Result result =
        text("Tart\nFor the crust\n1 cup flour\nFor the filling:\n2 eggs\n1 cup milk");
    List<Line> lines = Objects.requireNonNull(result.formula()).lines();
    assertThat(lines).extracting(Line::stage).containsExactly("crust", "filling", "filling");
  }

  @Test
  void a_step_is_cut_where_the_work_moves_on() {
    Intake.Result result =
        text("Tart\n2 eggs\nWarm the milk and strain. Bake the case first. 300 F for 20 min.");
    var stages = Objects.requireNonNull(result.formula()).stages();
    assertThat(stages).extracting(Stage::station).containsExactly("stove", "oven");
    assertThat(stages.get(0).target()).isNull();
    assertThat(Objects.requireNonNull(stages.get(1).target()).low()).isEqualTo("300 °F");
  }

  @Test
  void notes_about_keeping_are_no_stages() {
    Intake.Result result =
        text("Curd\n3 eggs\nStir for 10 minutes.\nKeeps a week.\n(Note it well)");
    assertThat(Objects.requireNonNull(result.formula()).stages()).hasSize(1);
    assertThat(result.formula().notes()).isEqualTo("Keeps a week.\n(Note it well)");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "200 g de farine|fr|wheat-flour-t55",
        "500 g Mehl|de|wheat-flour-405",
        "3 uova|it|egg",
        "2 cucharadas de azúcar|es|sugar-granulated",
        "2 cups flour|en|all-purpose-flour",
        "200 g prunes|en|prune-dried",
      })
  void the_language_is_told_by_the_words(String text, String language, String ingredient) {
    Intake.Result result = text(text);
    assertThat(result.language()).isEqualTo(language);
    assertThat(result.lines().get(0).ingredient()).isEqualTo(ingredient);
  }

  @Test
  void a_name_means_what_it_means_in_the_language_of_the_page() {
    Map<String, Object> french = Map.of("text", "200 g de prunes", "language", "fr");
    assertThat(result(french).lines().get(0).ingredient()).isEqualTo("plum");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "1/2 cake yeast|en|cake|yeast-fresh|yeast",
        "2 tsp Hobday's baking powder|en|tsp|baking-powder|baking powder",
        "1 cup Goat's whey powder|en|cup|-|Goat's whey powder",
        "100 g whole buckwheat starch|en|g|-|whole buckwheat starch",
        "1 whole nutmeg|en|-|nutmeg|nutmeg",
        "100 g burro freddo a pezzetti|it|g|butter-unsalted|burro",
        "100 g butter melted and cooled|en|g|butter-unsalted|butter",
        "Una presa di sale|it|pinch|salt|sale",
      })
  void words_before_and_behind_a_name_are_told_from_it(
      String text, String language, @Nullable String unit, @Nullable String ingredient, String as) {
    IntakeLine line = LabelledLines.read(text, language).lines().get(0);
    assertThat(line.unit()).isEqualTo(unit);
    assertThat(line.ingredient()).isEqualTo(ingredient);
    assertThat(line.asWritten()).isEqualTo(as);
  }

  @ParameterizedTest
  @ValueSource(strings = {"I 1/2 cups flour", "l/2 cup flour"})
  void a_letter_in_place_of_a_one_is_told(String text) {
    Intake.Result read = LabelledLines.read(text, "en");
    assertThat(read.lines().get(0).quantity()).isIn(1.5, 0.5);
    assertThat(read.unresolved().get(0).why()).contains("may be the figure 1");
  }

  @Test
  void exactly_one_source_is_given() {
    Refusal none = catchThrowableOfType(Refusal.class, () -> read(Map.of("language", "en")));
    assertThat(none).isNotNull();
    Refusal two = catchThrowableOfType(Refusal.class, () -> read(Map.of("text", "a", "csv", "b")));
    assertThat(two).isNotNull();
  }
}
