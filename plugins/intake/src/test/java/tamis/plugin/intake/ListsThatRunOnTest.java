package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Lists of ingredients and steps that run on behind their heading, as old books set them. */
class ListsThatRunOnTest {
  /** I. Beeton, The Book of Household Management (1861), 1765, "A nice plain cake". */
  private static final String BOOK =
      """
      A NICE PLAIN CAKE.

      INGREDIENTS.--1 quartern of dough, 1/4 lb. of moist sugar, 1/4 lb.
      of butter or good beef dripping, 1/4 pint of warm milk, 1/2 grated
      nutmeg or 1/2 oz. of caraway seeds.

      Mode.--If you are not in the habit of making bread at home, procure the dough.
      """;

  private static List<String> pieces(String text) {
    return Sent.read("text", text).lines().stream()
        .map(line -> text.substring(line.start(), line.end()))
        .toList();
  }

  @Test
  void a_list_is_parted_at_its_commas_and_keeps_its_places() {
    assertThat(pieces(BOOK))
        .containsExactly(
            "1 quartern of dough",
            "1/4 lb. of moist sugar",
            "1/4 lb.\nof butter or good beef dripping",
            "1/4 pint of warm milk",
            "1/2 grated\nnutmeg or 1/2 oz. of caraway seeds.");
    assertThat(Sent.read("text", BOOK).lines())
        .extracting(IntakeLine::line)
        .containsExactly(3, 3, 3, 4, 4);
  }

  @Test
  void the_steps_behind_it_are_steps() {
    assertThat(Sent.read("text", BOOK).passages())
        .filteredOn(passage -> passage.text().startsWith("Mode"))
        .extracting(passage -> passage.kind().name())
        .containsExactly("STEP");
  }

  @Test
  void work_behind_a_comma_stays_with_its_food() {
    assertThat(
            pieces(
                "Lemon cake\nIngredients: 1 cup flour, sifted, 2 eggs, the rind of 1 lemon, salt and"
                    + " 3 oz. butter\nBeat all."))
        .containsExactly(
            "1 cup flour, sifted", "2 eggs", "the rind of 1 lemon", "salt", "3 oz. butter");
  }

  @Test
  void lines_below_a_heading_stay_lines() {
    assertThat(pieces("Cake\nIngredients: 1 cup flour\n2 eggs\n3 oz butter\nBeat all."))
        .containsExactly("Ingredients: 1 cup flour", "2 eggs", "3 oz butter");
  }

  @Test
  void a_piece_can_be_corrected() {
    Intake.Result result =
        Sent.read(
            "text",
            BOOK,
            "corrections",
            List.of(Map.of("text", "1 quartern of dough", "instead", "1.8 kg bread flour")));
    assertThat(result.lines().get(0).ingredient()).isEqualTo("bread-flour");
  }

  @Test
  void in_a_list_of_capitals_a_food_is_no_heading() {
    assertThat(pieces("CAKE\n1 CUP FLOUR\n2 EGGS\nSALT\nBEAT ALL. BAKE 30 MINUTES."))
        .containsExactly("1 CUP FLOUR", "2 EGGS", "SALT");
    assertThat(pieces("Cake\n1 cup flour\nCREAM\n2 eggs")).containsExactly("1 cup flour", "2 eggs");
  }
}
