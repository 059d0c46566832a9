package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.intake.Sent.read;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** However the ingredients and steps of a JSON-LD recipe are listed. */
class RecipeListsTest {
  /** All of one recipe: two lines, however they are listed. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"recipeIngredient\":[[\"2 cups honey\"],[[\"1 cup milk\"]]]",
        "\"recipeIngredient\":[{\"@value\":\"2 cups honey\"},{\"text\":\"1 cup milk\"}]",
        "\"recipeIngredient\":{\"@list\":[\"2 cups honey\",\"1 cup milk\"]}",
        "\"recipeIngredient\":[{\"name\":\"honey\",\"amount\":\"2 cups\"},{\"name\":\"milk\",\"quantity\":1,\"unit\":\"cup\"}]",
        "\"recipeIngredient\":[{\"@type\":\"HowToSupply\",\"name\":\"honey\",\"requiredQuantity\":{\"value\":2,\"unitText\":\"cups\"}},\"1 cup milk\"]",
        "\"recipeIngredient\":{\"@type\":\"ItemList\",\"itemListElement\":[{\"@type\":\"ListItem\",\"item\":{\"name\":\"2 cups honey\"}},{\"name\":\"1 cup milk\"}]}",
        "\"recipeIngredient\":[],\"ingredients\":[\"2 cups honey\",\"1 cup milk\"]",
        "\"recipeIngredient\":null,\"supply\":[\"2 cups honey\",\"1 cup milk\"]",
        "\"schema:recipeIngredient\":[\"2 cups honey\",\"1 cup milk\"]",
        "\"https://schema.org/recipeIngredient\":\"2 cups honey\\n1 cup milk\""
      })
  void ingredients_are_found_however_they_are_listed(String listed) {
    Intake.Result result =
        read("jsonld", "{\"@type\":\"Recipe\"," + listed + "}", "language", "en");
    assertThat(result.lines())
        .extracting(IntakeLine::ingredient)
        .containsExactly("honey", "milk-whole");
    assertThat(result.lines()).extracting(IntakeLine::quantity).containsExactly(2.0, 1.0);
  }

  @Test
  void what_has_no_form_that_is_known_is_told_and_a_second_list_is_kept() {
    Intake.Result result =
        read(
            "jsonld",
            "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 cup milk\",{\"spoons\":2}],"
                + "\"ingredients\":[\"1 cup milk\",\"2 eggs\"]}");
    assertThat(result.unresolved())
        .extracting(Unresolved::text)
        .containsExactly("{ \"spoons\": 2 }");
    assertThat(result.passages()).extracting(Passage::text).containsExactly("2 eggs");
    assertThat(result.lines()).hasSize(2);
  }

  @Test
  void a_named_list_of_ingredients_is_a_part() {
    Intake.Result result =
        read(
            "jsonld",
            "{\"@type\":\"Recipe\",\"recipeIngredient\":[{\"name\":\"Glaze\",\"itemListElement\":[\"1 cup honey\"]},\"2 eggs\"]}");
    assertThat(result.lines()).extracting(IntakeLine::part).containsExactly("Glaze", null);
  }

  @Test
  void steps_are_read_at_any_depth_with_what_stands_beside_their_lists() {
    String steps = "[".repeat(30) + "\"Mix.\"" + "]".repeat(30);
    Intake.Result deep =
        read("jsonld", "{\"@type\":\"Recipe\",\"recipeInstructions\":" + steps + "}");
    assertThat(deep.passages()).extracting(Passage::text).containsExactly("Mix.");
    Intake.Result beside =
        read(
            "jsonld",
            "{\"@type\":\"Recipe\",\"recipeInstructions\":[{\"name\":\"Dough\",\"text\":\"Rest it.\",\"itemListElement\":[{\"item\":{\"text\":\"Knead.\"}}]},{\"odd\":true}]}");
    assertThat(beside.passages())
        .extracting(Passage::text)
        .containsExactly("Dough", "Rest it.", "Knead.", "{ \"odd\": true }");
  }
}
