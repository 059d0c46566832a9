package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the reader does not understand is told, wherever it stands. */
class NothingLostTest {
  private static Intake.Result read(String text) {
    return LabelledLines.read(text, "en");
  }

  private static List<String> unresolved(String text) {
    return read(text).unresolved().stream().map(Unresolved::text).distinct().toList();
  }

  @Test
  void lines_behind_a_step_that_are_not_understood_are_told() {
    assertThat(unresolved("Cake\n1 cup flour\nBeat well.\n3 whites\n2 grt eggs\n1 stone sugar"))
        .containsExactly("3 whites", "2 grt eggs", "1 stone sugar");
  }

  @Test
  void amounts_without_a_verb_are_no_step() {
    String text =
        "1 cup flour\nButter (100 g) and sugar (50 g)\n1 stone flour\n2 grt eggs\n3 whites\nsalt";
    assertThat(unresolved(text))
        .containsExactly(
            "Butter (100 g) and sugar (50 g)", "1 stone flour", "2 grt eggs", "3 whites", "salt");
  }

  @ParameterizedTest
  @ValueSource(strings = {"salt", "flour for dusting", "the yolks of three and white of one egg"})
  void a_food_behind_a_step_is_a_line(String last) {
    Intake.Result result = read("Cake\n1 cup flour\nBeat well.\n" + last);
    assertThat(result.lines()).hasSize(2);
    assertThat(result.lines().get(1).text()).isEqualTo(last);
  }

  @Test
  void a_food_behind_a_long_step_without_a_point_is_a_line() {
    String step = "Beat the eggs and the sugar together until they are light and fluffy";
    assertThat(unresolved("Cake\n1 cup flour\n" + step + "\nsalt")).containsExactly("salt");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"20 minutes at 350 °F", "Butter the pan", "1. Mix all", "Bake 30 minutes."})
  void work_stays_a_step(String last) {
    assertThat(read("Cake\n1 cup flour\nBeat well.\n" + last).lines()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2 teaspoons cream of tartar, 1 of soda",
        "1 egg (plus 1 yolk)",
        "1 egg yolk, plus 1 egg for glazing",
        "3 eggs plus 2 whites",
        "2 eggs, plus 1 egg beaten, for brushing",
        "1 cup milk mixed with 1 egg",
        "1 cup milk in which 2 tbsp of butter is melted",
        "1 cup milk scalded with a vanilla bean",
        "4 eggs, their weight in butter",
        "1 lb sugar to 1 lb fruit",
        "1 cup butter (half lard)",
        "1 cup sugar (half brown)",
        "2 cups flour (1 white, 1 wheat)",
        "3 tbsp butter, plus 1 tbsp melted",
        "100 g butter, plus 20 g for greasing",
        "1 cup sugar, plus 2 tbsp for sprinkling",
        "100 g sugar (+ 20 g for the top)",
        "2 eggs beaten with a little milk",
        "1 cup sugar (or 3/4 cup honey)",
        "4 eggs (or 5 small eggs)",
        "1 No. 10 can apples",
        "1 #2 can peaches",
        "1 can coconut milk",
        "1 cup oats",
        "1 cup walnuts in shell",
        "1 tsp (50 g) salt",
        "1 tbsp lemon",
        "1 tsp orange",
        "1 tsp almond",
        "1 cup lard, butter or both"
      })
  void a_second_amount_or_food_or_a_doubtful_one_is_told(String text) {
    assertThat(read(text).unresolved()).isNotEmpty();
  }

  @Test
  void a_second_part_of_an_egg_is_told_in_french() {
    assertThat(LabelledLines.read("2 œufs + 1 jaune", "fr").unresolved()).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1 cup butter, cut into 2 cm pieces",
        "100 g butter, cut in 1-inch cubes",
        "2 eggs, at room temperature",
        "2 cups flour, sifted 3 times",
        "2 (8-oz) packages cream cheese",
        "1 cup water (110 °F)",
        "1 cup sugar, divided",
        "6 tbsp butter, half melted",
        "1 cup flour (see note 2)",
        "100 g butter, cut in half"
      })
  void work_and_sizes_are_no_second_amount(String text) {
    assertThat(read(text).unresolved()).isEmpty();
  }

  @Test
  void more_of_the_same_is_added() {
    Intake.Result result = read("1/2 cup sugar, plus 1/4 cup, divided");
    assertThat(result.unresolved()).isEmpty();
    assertThat(result.lines().get(0).grams()).isEqualTo(150, within(0.5));
  }

  @ParameterizedTest
  @ValueSource(strings = {"2 eggs (medium)", "3 medium-sized eggs", "2 eggs, medium"})
  void eggs_are_of_their_size(String text) {
    assertThat(read(text).lines().get(0).ingredient()).isEqualTo("egg-medium");
  }

  @Test
  void lightly_packed_is_not_packed() {
    assertThat(read("1 cup lightly packed brown sugar").unresolved()).hasSize(1);
    assertThat(read("1 cup packed brown sugar").unresolved()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Zucchero, grammi 150.",
        "Yellow Paste Color.",
        "Moonberries, two basketfuls.",
        "Butter 82% - 1200 g (cold, in cubes)"
      })
  void a_short_line_under_the_heading_of_the_ingredients_is_no_step(String text) {
    Intake.Result result = read("Cake\nIngredients\n" + text + "\n2 eggs");
    assertThat(result.lines()).extracting(IntakeLine::text).contains(text);
  }

  @Test
  void amounts_in_a_sentence_before_any_line_are_told() {
    String text = "Take 2 cups of flour and 1 cup of milk. Mix them well in a bowl.";
    assertThat(unresolved("Cake\n" + text)).containsExactly(text);
  }

  @Test
  void a_line_of_two_sentences_that_begins_with_an_amount_is_a_line() {
    String text = "2 cups of all-purpose flour. Have it warm and dry.";
    assertThat(read("Cake\n" + text + "\n2 eggs").lines()).hasSize(2);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1 (8-oz) can crushed pineapple",
        "1 (8 oz) can peaches",
        "2 cups cherries, canned",
        "1 (15 oz) can pumpkin puree, drained",
        "pound of butter"
      })
  void what_is_kept_or_has_no_number_is_told(String text) {
    assertThat(unresolved(text)).containsExactly(text);
  }

  /** 125 g a cup as measured, less where it was spooned in: USDA SR28, NDB 20081. */
  @Test
  void how_flour_was_measured_may_be_said_behind_it() {
    double plain = grams("1 cup all-purpose flour");
    assertThat(plain).isEqualTo(125, within(0.1));
    assertThat(grams("1 cup all-purpose flour, spooned & leveled")).isLessThan(plain);
    assertThat(grams("1 cup all-purpose flour, sifted")).isEqualTo(plain);
  }

  private static double grams(String text) {
    return Objects.requireNonNull(read(text).lines().get(0).grams());
  }
}
