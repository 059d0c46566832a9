package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.plugin.intake.source.JsonText;
import tamis.plugin.intake.source.SourceLine;

/** Whatever a recipe comes in: text, JSON-LD, tables, HTML; and what is none. */
class SourcesTest {
  private static final String RECIPE =
      """
      {"@type":"Recipe","name":"Tea loaf","recipeYield":["1 loaf","12 slices"],
       "recipeIngredient":["2 cups all-purpose flour","1 cup milk, warmed","salt to taste"],
       "recipeInstructions":[{"@type":"HowToSection","name":"Loaf","itemListElement":
         [{"@type":"HowToStep","text":"Mix."},{"@type":"HowToStep","text":"Bake at 350 &deg;F for 1 hour."}]}]}
      """;

  private static Pantry kitchen() {
    return new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(new IntakePlugin())));
  }

  private static Answer<Intake.Result> answer(String form, Object source, Object... more) {
    Map<String, Object> input = new HashMap<>(Map.of(form, source));
    for (int i = 0; i < more.length; i += 2) {
      input.put((String) more[i], more[i + 1]);
    }
    Intake.Input read = new RecordReader(kitchen(), Limits.usual()).read(Intake.Input.class, input);
    return new Intake().calculate(read, kitchen());
  }

  private static Intake.Result read(String form, Object source, Object... more) {
    return answer(form, source, more).result();
  }

  private static Formula formula(Intake.Result result) {
    return Objects.requireNonNull(result.formula());
  }

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
    Map<String, Object> input = Map.of("text", "100 g flour\n50 g moon dust\n10 g moon dus");
    Intake.Input read = new RecordReader(kitchen, Limits.usual()).read(Intake.Input.class, input);
    Intake.Result result = new Intake().calculate(read, kitchen).result();
    assertThat(formula(result).lines())
        .extracting(Line::name)
        .containsExactly("house-flour", "house-flour");
    assertThat(result.unresolved()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[1,2",
        "{\"@type\":",
        "null",
        "{}",
        "[]",
        "{\"a\":1e999}",
        "\"\\u12\"",
        "{\"@type\":\"Cake\"}"
      })
  void json_that_holds_no_recipe_is_refused_in_words(String jsonld) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("jsonld", jsonld));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults().get(0).pointer()).isEqualTo("/jsonld");
  }

  private static Stream<String> soups() {
    return Stream.of(
        "(".repeat(50_000),
        "1".repeat(100_000) + " cups flour",
        "1/".repeat(50_000),
        "a ".repeat(100_000),
        "1 cup ".repeat(50_000),
        "1 cup flour, ".repeat(20_000),
        "one and ".repeat(30_000),
        "yolks of ".repeat(30_000),
        "\n".repeat(200_000) + "1 cup milk",
        "1 cup milk or ".repeat(20_000),
        "2 - ".repeat(50_000),
        "½".repeat(50_000),
        "😀 cup 𝒻lour\n\u202e1 cup milk\u0000",
        "grated finely ".repeat(10) + "x",
        ("It was a dark night and two men walked along the road. ".repeat(6) + "\n").repeat(2_500),
        "two men walked in\n".repeat(2_000),
        "1 cup grated finely chopped sifted\n".repeat(2_500));
  }

  @ParameterizedTest
  @MethodSource("soups")
  void anything_is_read_in_bounded_time_and_nothing_of_it_is_lost(String soup) {
    Intake.Result result =
        assertTimeoutPreemptively(Duration.ofSeconds(60), () -> read("text", soup));
    long told =
        result.passages().size() + result.lines().stream().map(IntakeLine::line).distinct().count();
    assertThat(told).isEqualTo(SourceLine.of(soup).size());
  }

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

  @Test
  void deep_nesting_is_refused_or_read_but_never_breaks() {
    String deep = "[".repeat(100_000) + "]".repeat(100_000);
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("jsonld", deep));
    assertThat(refusal.faults().get(0).message()).contains("nests deeper");
    Intake.Result html = read("html", "<div>".repeat(50_000) + "1 cup milk");
    assertThat(html.lines()).hasSize(1);
  }

  @Test
  void random_words_of_the_trade_give_lines_or_passages_and_a_formula_that_can_be_made() {
    Random random = new Random(20_261_125);
    List<String> words =
        List.of(
            "1",
            "2 1/2",
            "½",
            "one",
            "a",
            "half",
            "cup",
            "tsp",
            "g",
            "oz",
            "package",
            "can",
            "(",
            ")",
            ",",
            "-",
            "or",
            "and",
            "plus",
            "of",
            "sifted",
            "melted",
            "flour",
            "butter",
            "eggs",
            "milk",
            "sugar",
            "yolks",
            "juice",
            "lemon",
            "to taste",
            "for the pan",
            "large",
            "14-oz",
            "x",
            "/",
            "%",
            "mango",
            "\n",
            "\n",
            "bake",
            "350 F",
            "30 minutes",
            "Serves 8",
            ":");
    for (int round = 0; round < 150; round++) {
      StringBuilder text = new StringBuilder();
      for (int i = 0; i < 40; i++) {
        text.append(words.get(random.nextInt(words.size()))).append(' ');
      }
      Intake.Result result = read("text", text.toString(), "language", "en");
      long told =
          result.passages().size()
              + result.lines().stream().map(IntakeLine::line).distinct().count();
      assertThat(told).as(text.toString()).isEqualTo(SourceLine.of(text.toString()).size());
      if (result.formula() != null) {
        kitchen().batch(FormulaRef.of(result.formula()), null);
      }
    }
  }
}
