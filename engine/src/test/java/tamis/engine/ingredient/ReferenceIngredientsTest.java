package tamis.engine.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.table.Row;

class ReferenceIngredientsTest {
  private static final ReferenceIngredients BUILT_IN = ReferenceIngredients.standard();
  private static final Pantry PANTRY = new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of()));

  private static Ingredient named(String name) {
    return PANTRY.ingredient(IngredientRef.parse(name));
  }

  private static Fault refusal(String name) {
    return catchThrowableOfType(Refusal.class, () -> named(name)).faults().get(0);
  }

  /** Ingredients are made when they are asked for: here all of them are, and each fact is read. */
  @Test
  void every_ingredient_of_the_tables_can_be_made() {
    assertThat(BUILT_IN.all()).hasSize(IngredientTables.INGREDIENTS.rows().size());
    assertThat(BUILT_IN.all()).hasSizeGreaterThanOrEqualTo(500).doesNotHaveDuplicates();
    assertThat(BUILT_IN.all().stream().mapToInt(i -> i.densities().size()).sum())
        .isEqualTo(IngredientTables.DENSITIES.rows().size());
    assertThat(BUILT_IN.all().stream().mapToInt(i -> i.pieces().size()).sum())
        .isEqualTo(IngredientTables.PIECES.rows().size());
    assertThat(
            BUILT_IN.all().stream()
                .mapToInt(i -> i.contains().size() + i.mayContain().size())
                .sum())
        .isEqualTo(IngredientTables.ALLERGENS.rows().size());
    assertThat(BUILT_IN.all().stream().mapToInt(i -> i.windows().size()).sum())
        .isEqualTo(IngredientTables.WINDOWS.rows().size());
    assertThat(BUILT_IN.all().stream().mapToInt(i -> i.consistsOf().size()).sum())
        .isEqualTo(IngredientTables.PARTS.rows().size());
    assertThat(BUILT_IN.byId("egg")).isSameAs(BUILT_IN.byId("egg"));
    assertThat(BUILT_IN.byId("no-such-food")).isNull();
  }

  @Test
  void the_whole_of_the_composition_table_came_along() {
    assertThat(
            BUILT_IN.all().stream()
                .filter(i -> i.source().startsWith("usda-sr28, NDB "))
                .map(i -> i.source().substring(15, 20))
                .distinct())
        .hasSizeGreaterThanOrEqualTo(321);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "egg",
        "egg-yolk",
        "egg-white",
        "egg-medium",
        "all-purpose-flour",
        "bread-flour",
        "whole-wheat-flour",
        "rye-flour",
        "sugar-granulated",
        "sugar-powdered",
        "butter-unsalted",
        "milk-whole",
        "cream-heavy",
        "salt",
        "water",
        "honey",
        "cocoa-powder",
        "chocolate-dark",
        "yeast-instant",
        "almond",
        "almond-ground",
        "raisin",
        "sultana",
        "cream-double",
        "self-raising-flour"
      })
  void the_ids_that_callers_rely_on_exist(String id) {
    assertThat(named(id).id()).isEqualTo(id);
  }

  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "All-Purpose Flour, all-purpose-flour",
    "plain flour, all-purpose-flour",
    "'  bread \u00a0 flour ', bread-flour",
    "eggs, egg",
    "egg yolks, egg-yolk",
    "icing sugar, sugar-powdered",
    "caster sugar, sugar-superfine",
    "bicarbonate of soda, baking-soda",
    "crème fraîche, creme-fraiche",
    "cre\u0300me frai\u0302che, creme-fraiche",
    "Zucker, sugar-granulated",
    "beurre, butter-unsalted",
    "burro, butter-unsalted",
    "mantequilla, butter-unsalted",
    "ground almonds, almond-ground",
    "poudre d'amande, almond-ground",
    "poudre d’amande, almond-ground"
  })
  void a_name_in_any_language_and_writing_finds_its_ingredient(String name, String id) {
    assertThat(named(name).id()).isEqualTo(id);
  }

  /** One word, two foods: the British meaning and the American one stay apart. */
  @ParameterizedTest(name = "{0} is not {1}")
  @CsvSource({
    "cream-double, heavy cream",
    "single cream, light cream",
    "maize cornflour, corn-flour",
    "self-raising-flour, self-rising flour",
    "black treacle, golden syrup",
    "black treacle, light molasses",
    "icing sugar, granulated sugar",
    "egg medium, egg"
  })
  void names_that_mean_different_foods_are_never_aliases(String british, String american) {
    assertThat(named(british)).isNotEqualTo(named(american));
  }

  @Test
  void self_raising_flour_has_no_salt_and_self_rising_flour_has() {
    assertThat(named("self-raising-flour").per100g(Nutrient.SODIUM))
        .isLessThan(named("self-rising flour").per100g(Nutrient.SODIUM));
    assertThat(named("cream-double").per100g(Nutrient.FAT))
        .isGreaterThan(named("heavy cream").per100g(Nutrient.FAT) + 5);
  }

  @Test
  void only_these_names_mean_two_foods() {
    Map<String, Set<String>> ambiguous = new TreeMap<>();
    for (String name : BUILT_IN.names()) {
      if (BUILT_IN.named(name).size() > 1) {
        ambiguous.put(name, BUILT_IN.named(name));
      }
    }
    assertThat(ambiguous)
        .isEqualTo(
            Map.of(
                "corn flour", Set.of("corn-flour", "cornstarch"),
                "corn syrup", Set.of("corn-syrup-light", "glucose-syrup"),
                "cornflour", Set.of("cornstarch", "corn-flour"),
                "double cream", Set.of("cream-double", "cream-heavy"),
                "molasses", Set.of("molasses-light", "molasses-blackstrap"),
                "self raising flour", Set.of("self-raising-flour", "self-rising-flour"),
                "self-raising flour", Set.of("self-raising-flour", "self-rising-flour"),
                "treacle", Set.of("treacle-black", "golden-syrup"),
                "vegetable oil", Set.of("oil-soybean", "oil-canola"),
                "whipping cream", Set.of("cream-heavy", "cream-whipping")));
  }

  @Test
  void a_name_of_two_foods_is_refused_and_both_are_told() {
    Fault fault = refusal("Whipping  Cream");
    assertThat(fault.code()).isEqualTo(FaultCode.AMBIGUOUS_INGREDIENT);
    assertThat(fault.given()).isEqualTo("Whipping  Cream");
    assertThat(fault.allowed()).contains("cream-heavy", "cream-whipping");
    assertThat(fault.message()).contains("cream-heavy or cream-whipping");
  }

  @ParameterizedTest(name = "{0}: did you mean {1}")
  @CsvSource({
    "all-purpose-flower, all-purpose-flour",
    "suger, sugar",
    "buter, butter",
    "egg-yolc, egg-yolk",
    "Zuker, Zucker"
  })
  void a_near_miss_is_refused_with_what_may_be_meant(String name, String near) {
    Fault fault = refusal(name);
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_INGREDIENT);
    assertThat(fault.message()).startsWith("no ingredient `" + name + "`; did you mean");
    assertThat(fault.message()).containsIgnoringCase(near);
  }

  @Test
  void a_name_that_is_near_to_nothing_is_refused_without_a_guess() {
    assertThat(refusal("zorkmid dust").message()).isEqualTo("no ingredient `zorkmid dust`");
    assertThat(refusal("x".repeat(200)).message()).endsWith("`");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "\u00a0"})
  void a_name_of_nothing_is_refused(String name) {
    assertThat(refusal(name).message()).contains("1 to 200 characters");
    assertThat(refusal("x".repeat(201)).message()).contains("1 to 200 characters");
  }

  @Test
  void in_one_language_a_name_means_one_food_and_languages_are_tags() {
    Map<String, String> meaning = new HashMap<>();
    for (Row row : IngredientTables.NAMES.rows()) {
      String language = row.text("language");
      assertThat(Locale.forLanguageTag(language).toLanguageTag()).isEqualTo(language);
      String id = row.text("ingredient");
      String key = language + " " + new IngredientRef(row.text("name")).folded();
      String other = meaning.putIfAbsent(key, id);
      assertThat(other == null || other.equals(id)).as(key + ": " + other + ", " + id).isTrue();
    }
  }

  @Test
  void no_name_is_the_id_of_another_food() {
    for (Row row : IngredientTables.NAMES.rows()) {
      String folded = new IngredientRef(row.text("name")).folded();
      if (BUILT_IN.byId(folded) != null) {
        assertThat(row.text("ingredient")).as("line " + row.line()).isEqualTo(folded);
      }
    }
  }

  @Test
  void what_the_table_leaves_empty_is_absent_and_never_zero() {
    int transKnown = 0;
    for (Row row : IngredientTables.INGREDIENTS.rows()) {
      Ingredient ingredient = BUILT_IN.byId(row.key());
      for (Nutrient nutrient : Nutrient.values()) {
        assertThat(ingredient.per100g(nutrient))
            .as(row.key() + " " + nutrient)
            .isEqualTo(row.numberOrNull(nutrient.column()));
      }
      transKnown += ingredient.per100g(Nutrient.TRANS) == null ? 0 : 1;
    }
    assertThat(transKnown).isGreaterThanOrEqualTo(163).isLessThan(BUILT_IN.all().size() - 100);
    assertThat(named("butter-clarified").per100g(Nutrient.TRANS)).isNull();
    assertThat(named("butter-salted").per100g(Nutrient.TRANS)).isEqualTo(3.278);
  }

  @ParameterizedTest(name = "{0} {1} is {2}")
  @CsvSource({
    "butter-salted, ENERGY_KCAL, 717",
    "butter-salted, FAT, 81.11",
    "butter-salted, SODIUM, 643",
    "butter-salted, WATER, 15.87",
    "sugar-granulated, ENERGY_KCAL, 387",
    "sugar-granulated, CARBOHYDRATE, 99.98",
    "all-purpose-flour, ENERGY_KCAL, 364",
    "all-purpose-flour, PROTEIN, 10.33",
    "egg, ENERGY_KCAL, 143",
    "egg, PROTEIN, 12.56",
    "egg, FAT, 9.51"
  })
  void known_figures_are_those_of_the_source(String id, Nutrient nutrient, double amount) {
    assertThat(named(id).per100g(nutrient)).isEqualTo(amount);
  }

  @ParameterizedTest(name = "{0} contains {1} of {2}")
  @CsvSource({
    "all-purpose-flour, WHEAT, wheat",
    "all-purpose-flour, CEREAL_GLUTEN, wheat",
    "rye-flour, CEREAL_GLUTEN, rye",
    "butter-unsalted, MILK,",
    "milk-whole, MILK,",
    "egg, EGG,",
    "egg-white, EGG,",
    "almond, TREE_NUT, almond",
    "almond-ground, TREE_NUT, almond"
  })
  void allergens_are_told_with_their_species(String id, Allergen allergen, String species) {
    assertThat(named(id).contains()).contains(new AllergenFact(allergen, species));
  }

  @Test
  void water_sugar_and_salt_contain_no_named_allergen() {
    for (String id : List.of("water", "sugar-granulated", "salt")) {
      assertThat(named(id).contains()).as(id).isEmpty();
    }
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "all-purpose-flour, true",
    "bread-flour, true",
    "whole-wheat-flour, true",
    "rye-flour, true",
    "self-raising-flour, true",
    "cornstarch, false",
    "almond-ground, false",
    "cocoa-powder, false",
    "vital-gluten, false",
    "sugar-granulated, false"
  })
  void flour_is_what_percentages_are_of(String id, boolean flour) {
    assertThat(named(id).isFlour()).isEqualTo(flour);
  }

  @ParameterizedTest
  @ValueSource(strings = {"salt", "yeast-instant", "baking-powder", "baking-soda"})
  void small_errors_of_these_matter(String id) {
    assertThat(named(id).isSensitive()).isTrue();
    assertThat(named("all-purpose-flour").isSensitive()).isFalse();
  }

  @Test
  void sizes_of_eggs_and_what_is_left_of_them_agree_with_the_pieces() {
    for (Row row : IngredientTables.EGGS.rows()) {
      Ingredient egg = BUILT_IN.byId(row.key());
      assertThat(egg.pieceMass().grams()).as(row.key()).isEqualTo(row.number("edible_g"));
      assertThat(row.number("white_g") + row.number("yolk_g"))
          .as("a white and a yolk are no more than the egg")
          .isLessThanOrEqualTo(row.number("edible_g") + 0.11);
    }
    for (Row row : IngredientTables.BY_PRODUCTS.rows()) {
      assertThat(BUILT_IN.byId(row.text("used"))).as(row.key()).isNotNull();
      assertThat(BUILT_IN.byId(row.text("whole"))).as(row.key()).isNotNull();
      assertThat(BUILT_IN.byId(row.text("left"))).as(row.key()).isNotNull();
    }
  }
}
