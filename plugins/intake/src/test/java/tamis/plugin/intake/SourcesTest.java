package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static tamis.plugin.intake.Sent.answer;
import static tamis.plugin.intake.Sent.formula;
import static tamis.plugin.intake.Sent.read;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Line;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.plugin.intake.source.JsonText;

/** Whatever a recipe comes in: text, JSON-LD, tables, HTML. */
class SourcesTest {
  private static final String RECIPE =
      """
      {"@type":"Recipe","name":"Tea loaf","recipeYield":["1 loaf","12 slices"],
       "recipeIngredient":["2 cups all-purpose flour","1 cup milk, warmed","salt to taste"],
       "recipeInstructions":[{"@type":"HowToSection","name":"Loaf","itemListElement":
         [{"@type":"HowToStep","text":"Mix."},{"@type":"HowToStep","text":"Bake at 350 &deg;F for 1 hour."}]}]}
      """;

  @Test
  void a_recipe_of_schema_org_is_read_as_text_and_as_an_object() {
    Intake.Result text = read("jsonld", RECIPE);
    Intake.Result object = read("jsonld", Objects.requireNonNull(JsonText.parse(RECIPE)));
    assertThat(object).isEqualTo(text);
    assertThat(formula(text).title()).isEqualTo("Tea loaf");
    assertThat(formula(text).lines()).hasSize(3);
    assertThat(Objects.requireNonNull(formula(text).yield()).portions()).isEqualTo(12);
    assertThat(formula(text).stages())
        .filteredOn(stage -> stage.target() != null)
        .singleElement()
        .satisfies(s -> assertThat(s.station()).isEqualTo("oven"));
  }

  @Test
  void recipes_are_found_in_graphs_and_chosen_by_number() {
    String graph = "{\"@graph\":[{\"@type\":\"WebPage\"}," + RECIPE + ",{\"@type\":[\"Recipe\"]}]}";
    assertThat(read("jsonld", graph).recipes()).isEqualTo(2);
    assertThat(read("jsonld", graph, "recipe", 2).formula()).isNull();
    Refusal third = catchThrowableOfType(Refusal.class, () -> read("jsonld", graph, "recipe", 3));
    assertThat(third.faults().get(0).pointer()).isEqualTo("/recipe");
  }

  @Test
  void a_page_of_the_web_is_read_by_its_data_or_by_its_text() {
    String page =
        "<html lang=de><head><script type='application/ld+json'>"
            + RECIPE.replace("1 cup milk, warmed", "1 Tasse Milch")
            + "</script></head><body>x</body></html>";
    assertThat(read("html", page).language()).isEqualTo("de");
    String bare =
        "<title>Buns</title><body><h1>Buns</h1><ul><li>2 cups bread flour<li>1&frac12; tsp salt</ul><p>Bake 20 min.";
    Intake.Result result = read("html", bare);
    assertThat(formula(result).lines())
        .extracting(Line::name)
        .containsExactly("bread-flour", "salt");
    assertThat(result.lines().get(1).quantity()).isEqualTo(1.5);
    assertThat(result.unresolved()).isEmpty();
  }

  @Test
  void html_asks_for_nothing_from_outside() {
    String page = "<!DOCTYPE x [<!ENTITY e SYSTEM \"file:///etc/hostname\">]><p>1 cup milk &e;</p>";
    Intake.Result result = read("html", page);
    assertThat(result.lines().get(0).text()).contains("&e;");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "quantity,unit,ingredient,preparation\r\n2 1/4,cups,all-purpose flour,sifted\r\n100,g,sugar,\r\n",
        "Menge;Einheit;Zutat;note\n2.25;cup;all-purpose flour;sifted\n100;g;sugar;\n",
        "line\n\"2 1/4 cups all-purpose flour, sifted\"\n100 g sugar\n",
      })
  void a_table_with_named_columns_is_read_row_by_row(String csv) {
    Intake.Result result = read("csv", csv, "language", "en");
    assertThat(result.lines()).extracting(IntakeLine::quantity).containsExactly(2.25, 100.0);
    assertThat(result.lines().get(0).preparation()).isEqualTo("sifted");
  }

  @Test
  void a_table_without_a_column_that_names_ingredients_is_refused() {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("csv", "a,b\n1,2\n"));
    assertThat(refusal.faults().get(0).message()).contains("`ingredient` or `line`");
  }

  @Test
  void what_is_written_as_json_ld_is_read_back_as_an_equal_formula() {
    for (String text :
        List.of(
            "Tart\nServes 8\nFor the crust\n1 cup sifted flour\nFor the filling:\n3 large eggs\n"
                + "1/3 cup milk, warm\nsalt to taste\nBake at 350 F for 25 to 30 minutes.\nGood cold.",
            "2-3 tbsp honey\n1 cup (125 g) all-purpose flour\n1 can evaporated milk")) {
      Answer<Intake.Result> answer = answer("text", text);
      String written = RecipeJson.of(answer.result());
      Intake.Result back = read("jsonld", written);
      assertThat(back.formula()).isEqualTo(answer.result().formula());
      assertThat(back.unresolved()).isEmpty();
      assertThat(RecipeJson.of(back)).isEqualTo(written);
    }
  }

  @Test
  void a_line_that_was_changed_since_is_read_and_told() {
    String written = RecipeJson.of(read("text", "1 cup honey\n2 eggs"));
    Answer<Intake.Result> back = answer("jsonld", written.replace("1 cup honey", "2 cup honey"));
    assertThat(formula(back.result()).lines().get(0).quantity().low()).isEqualTo(2);
    assertThat(back.remarks()).anyMatch(remark -> remark.code().equals("document-left"));
  }

  @Test
  void several_recipes_of_a_text_are_divided_at_rules() {
    String text =
        "Buns\n2 cups bread flour\n1 tsp salt\n---\nMethod\nMix.\n=====\nTart\n1 cup milk\n2 eggs\n";
    Intake.Result first = read("text", text);
    assertThat(first.recipes()).isEqualTo(2);
    assertThat(first.passages()).extracting(Passage::text).contains("Mix.");
    Intake.Result second = read("text", text, "recipe", 2);
    assertThat(formula(second).title()).isEqualTo("Tart");
    IntakeLine milk = second.lines().get(0);
    assertThat(text.substring(milk.start(), milk.end())).isEqualTo("1 cup milk");
    assertThat(milk.line()).isEqualTo(9);
  }

  @Test
  void what_a_person_wrote_instead_is_read_in_place_of_the_line() {
    List<Map<String, String>> corrections =
        List.of(
            Map.of("text", "6 eggs + 2 yolks", "instead", "6 eggs | 2 egg yolks"),
            Map.of("text", "a bit of this", "instead", "-"));
    Intake.Result result =
        read("text", "6 eggs + 2 yolks\na bit of this", "corrections", corrections);
    assertThat(result.unresolved()).isEmpty();
    assertThat(formula(result).lines()).extracting(Line::name).containsExactly("egg", "egg-yolk");
  }

  @Test
  void a_shop_s_own_ingredient_goes_before_what_is_built_in() {
    var own =
        new RecordReader(References.UNCHECKED, Limits.usual())
            .read(
                tamis.engine.ingredient.Ingredient.class,
                Map.of("id", "house-flour", "names", Map.of("en", List.of("flour", "moon dust"))));
    Pantry kitchen =
        new Pantry(
            Shelf.of(List.of(), List.of(own)), Pantry.Fittings.of(List.of(new IntakePlugin())));
    Intake.Result result =
        answer(kitchen, "text", "100 g flour\n50 g moon dust\n10 g moon dus").result();
    assertThat(formula(result).lines())
        .extracting(Line::name)
        .containsExactly("house-flour", "house-flour");
    assertThat(result.unresolved()).hasSize(1);
  }

  @Test
  void a_row_without_an_ingredient_is_a_note() {
    Intake.Result result =
        read("csv", "ingredient,quantity,note,oven\nhoney,1 cup,,\n,,keep warm,180 C\n");
    assertThat(result.lines()).hasSize(1);
    assertThat(result.passages()).extracting(Passage::text).contains("keep warm", "180 C");
  }

  @Test
  void recipes_of_one_source_are_the_same_in_any_order() {
    StringBuilder page = new StringBuilder();
    for (int i = 1; i <= 300; i++) {
      page.append("Buns ")
          .append(i)
          .append("\r\n")
          .append(i)
          .append(" g honey\r\n2 eggs\r\n----\r\n");
    }
    String text = page.toString();
    for (int which : List.of(300, 1, 17, 300)) {
      Intake.Result result = read("text", text, "recipe", which);
      IntakeLine honey = result.lines().get(0);
      assertThat(result.recipes()).isEqualTo(300);
      assertThat(honey.quantity()).isEqualTo((double) which);
      assertThat(text.substring(honey.start(), honey.end())).isEqualTo(honey.text());
      assertThat(text.lines().skip(honey.line() - 1).findFirst()).hasValue(honey.text());
    }
  }
}
