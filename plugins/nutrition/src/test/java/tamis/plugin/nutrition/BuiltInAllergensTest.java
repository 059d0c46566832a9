package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.table.Row;
import tamis.engine.table.TableReader;

/** Every built-in food that is made of an allergen says so, and none says so without a reason. */
class BuiltInAllergensTest {

  @ParameterizedTest(name = "{0} {1} contains {3} {4}")
  @CsvFileSource(resources = "/allergen-kinds.csv", numLinesToSkip = 1)
  void foods_of_a_kind_carry_its_allergen(
      String column, String pattern, String except, String allergen, String species) {
    List<String> matching = new ArrayList<>();
    for (Ingredient ingredient : ReferenceIngredients.standard().all()) {
      if (matches(ingredient, column, pattern, except)) {
        matching.add(ingredient.id());
        assertThat(ingredient.contains())
            .as("%s contains", ingredient.id())
            .contains(new AllergenFact(allergen(allergen), species));
      }
    }
    assertThat(matching).isNotEmpty();
  }

  @Test
  void every_tag_has_a_reason_in_the_kind_of_the_food() {
    List<Row> rules =
        TableReader.plain(
                BuiltInAllergensTest.class,
                "/allergen-kinds.csv",
                "Kinds of food and their allergens",
                List.of("column", "pattern", "allergen", "species"))
            .rows();
    for (Ingredient ingredient : ReferenceIngredients.standard().all()) {
      for (AllergenFact fact : ingredient.contains()) {
        assertThat(rules.stream().anyMatch(rule -> explains(rule, ingredient, fact)))
            .as("a reason for %s of %s", fact, ingredient.id())
            .isTrue();
      }
    }
  }

  @Test
  void the_table_for_readers_shows_the_tags_of_every_built_in_ingredient() {
    Map<String, Row> rows =
        AllergenRules.REVIEW.rows().stream()
            .collect(Collectors.toMap(row -> row.text("ingredient"), row -> row));
    assertThat(rows).hasSize(ReferenceIngredients.standard().all().size());
    for (Ingredient ingredient : ReferenceIngredients.standard().all()) {
      Row row = rows.get(ingredient.id());
      assertThat(row).as(ingredient.id()).isNotNull();
      assertThat(row.textOrNull("contains"))
          .as("contains of %s", ingredient.id())
          .isEqualTo(text(ingredient.contains()));
      assertThat(row.textOrNull("may_contain"))
          .as("may_contain of %s", ingredient.id())
          .isEqualTo(text(ingredient.mayContain()));
    }
  }

  private static boolean explains(Row rule, Ingredient ingredient, AllergenFact fact) {
    return allergen(rule.text("allergen")) == fact.allergen()
        && Objects.equals(rule.textOrNull("species"), fact.species())
        && matches(
            ingredient, rule.text("column"), rule.text("pattern"), rule.textOrNull("except"));
  }

  private static String text(List<AllergenFact> facts) {
    return facts.isEmpty()
        ? null
        : facts.stream()
            .map(
                f ->
                    AllergenRules.key(f.allergen())
                        + (f.species() == null ? "" : " (" + f.species() + ")"))
            .collect(Collectors.joining("; "));
  }

  private static boolean matches(
      Ingredient ingredient, String column, String pattern, String except) {
    String text = column.equals("kind") ? String.valueOf(ingredient.kind()) : ingredient.id();
    return text.matches(pattern) && (except == null || !ingredient.id().matches(except));
  }

  private static Allergen allergen(String key) {
    return Allergen.valueOf(key.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
