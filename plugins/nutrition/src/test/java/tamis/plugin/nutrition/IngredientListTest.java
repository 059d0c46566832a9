package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class IngredientListTest extends CalculationContract<IngredientList.Input, IngredientList.Result> {
  private static final Map<String, String> IDS =
      Map.of(
          "flour",
          "all-purpose-flour",
          "bread",
          "bread-white",
          "margarine",
          "margarine-salted",
          "cheese",
          "cheese-cheddar",
          "sugar",
          "sugar-granulated",
          "butter",
          "butter-unsalted",
          "meat",
          "ham");

  @Override
  protected Calculation<IngredientList.Input, IngredientList.Result> calculation() {
    return new IngredientList();
  }

  @Override
  protected Plugin plugin() {
    return new NutritionPlugin();
  }

  @Override
  protected Kitchen kitchen() {
    return new Bakery()
        .with(
            Bakery.formula(
                "cream",
                Map.of("bakeLoss", "10 %"),
                "milk-whole 500 g",
                "egg-yolk 80 g",
                "sugar-granulated 120 g",
                "cornstarch 40 g"))
        .with(
            Bakery.formula(
                "tart",
                Map.of(),
                "all-purpose-flour 300 g",
                "butter-salted 150 g",
                "=cream 400 g",
                "chocolate-dark 50 g",
                "salt 2 g",
                "almond-ground 12 g",
                "butter-unsalted as needed"))
        .with(Bakery.formula("spelt-bread", Map.of(), "spelt-flour 500 g", "water 300 g"))
        .with(Bakery.formula("poolish", Map.of(), "bread-flour 300 g", "water 300 g"))
        .with(
            Bakery.formula(
                "bread",
                Map.of("bakeLoss", "10 %"),
                "bread-flour 700 g",
                "water 350 g",
                "salt 20 g",
                "yeast-instant 5 g"))
        .with(
            Bakery.formula(
                "rusk",
                Map.of("bakeLoss", "30 %"),
                "bread-flour 700 g",
                "water 350 g",
                "salt 20 g"))
        .withIngredient(
            Map.of(
                "id",
                "own-spread",
                "names",
                Map.of("en", List.of("Nut & \"milk\" <spread>")),
                "contains",
                List.of(
                    Map.of("allergen", "milk"),
                    Map.of("allergen", "tree-nut", "species", "hazelnut"))))
        .open();
  }

  private static Map<String, Object> asked(Object formula, String regime) {
    Map<String, Object> input = new HashMap<>();
    input.put("formula", formula);
    input.put("regime", regime);
    return input;
  }

  @ParameterizedTest(name = "{2} of {0} baked to {1} g: {3} ({5})")
  @CsvFileSource(resources = "/quid.csv", numLinesToSkip = 1)
  void percentages_match_the_worked_examples(
      String lines, double baked, String named, double percent, String text) {
    List<String> list = new ArrayList<>();
    for (String line : lines.split(";")) {
      String[] parts = line.split("=");
      list.add(IDS.getOrDefault(parts[0], parts[0]) + " " + parts[1] + " g");
    }
    Map<String, Object> formula =
        Bakery.formula("sample", Map.of("mass", baked + " g"), list.toArray(String[]::new));
    Map<String, Object> input = asked(formula, "EU");
    input.put("named", List.of(IDS.getOrDefault(named, named)));
    IngredientList.Quid quid = result(input).quid().get(0);
    assertThat(quid.percent()).isEqualTo(percent, within(0.0005));
    assertThat(quid.text()).isEqualTo(text);
    assertThat(result(input).text()).contains(" (" + text + ")");
  }

  /** Reg. (EU) 1169/2011 Annex II, 1 and Article 21: the list refers to the name in the annex. */
  @ParameterizedTest
  @CsvSource({"EU", "UK", "US"})
  void a_kind_of_wheat_says_that_it_is_wheat(String regime) {
    assertThat(result(asked("spelt-bread", regime)).text())
        .isEqualToIgnoringCase("spelt flour (wheat), water")
        .contains("(WHEAT)");
  }

  @Test
  void entries_stand_in_descending_weight_with_compounds_in_brackets() {
    IngredientList.Result result = result(asked("tart", "EU"));
    assertThat(result.text())
        .isEqualTo(
            "cream (MILK, sugar, EGG yolk, corn starch), all-purpose flour (WHEAT), salted butter"
                + " (cream, salt, contains MILK), dark chocolate (cocoa mass, sugar, cocoa butter,"
                + " emulsifier: SOY lecithin, vanilla extract), ground ALMONDS, salt, unsalted"
                + " butter (MILK)");
    assertThat(result.html())
        .startsWith("cream (<strong>milk</strong>, sugar, <strong>egg</strong> yolk")
        .contains("ground <strong>almonds</strong>");
  }

  @Test
  void what_is_used_as_needed_stands_last_and_is_remarked() {
    Answer<IngredientList.Result> answer = answer(read(asked("tart", "EU")));
    assertThat(answer.result().entries().get(6).ingredient()).isEqualTo("butter-unsalted");
    assertThat(answer.remarks()).extracting(Remark::code).contains("no-weight");
  }

  @Test
  void small_amounts_follow_after_the_two_percent_words_in_the_US() {
    IngredientList.Result result = result(asked("tart", "US"));
    assertThat(result.text())
        .endsWith("contains 2% or less of: ground ALMONDS, salt, unsalted butter (MILK)");
    Map<String, Object> input = asked("tart", "US");
    input.put("minorPercent", 1);
    assertThat(result(input).text())
        .endsWith("ground ALMONDS, contains 1% or less of: salt, unsalted butter (MILK)");
    for (IngredientList.Entry entry : result.entries()) {
      assertThat(entry.minor()).isEqualTo(entry.percent() <= 2);
    }
  }

  @Test
  void sub_formulas_can_be_dispersed() {
    Map<String, Object> input = asked("tart", "EU");
    input.put("compounds", "dispersed");
    assertThat(result(input).text()).startsWith("MILK, all-purpose flour (WHEAT), salted butter");
  }

  @Test
  void a_preferment_is_the_same_dough() {
    Map<String, Object> formula =
        Bakery.formula("dough", Map.of(), "bread-flour 400 g", "water 100 g", "salt 14 g");
    List<Map<String, Object>> lines = new ArrayList<>();
    lines.add(Map.of("formula", "poolish", "quantity", "600 g", "role", "preferment"));
    ((List<?>) formula.get("lines")).forEach(line -> lines.add(new HashMap<>(cast(line))));
    formula.put("lines", lines);
    assertThat(result(asked(formula, "US")).entries())
        .extracting(IngredientList.Entry::ingredient)
        .containsExactly("bread-flour", "water", "salt");
    assertThat(result(asked(formula, "US")).entries())
        .extracting(IngredientList.Entry::grams)
        .containsExactly(700.0, 400.0, 14.0);
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> cast(Object line) {
    return (Map<String, Object>) line;
  }

  @Test
  void water_counts_as_finished_weight_less_all_else_in_the_EU() {
    // 1075 g of dough bake to 967.5 g; 967.5 - 725 = 242.5 g of water
    IngredientList.Entry water = result(asked("bread", "EU")).entries().get(1);
    assertThat(water.ingredient()).isEqualTo("water");
    assertThat(water.grams()).isEqualTo(242.5, within(1e-9));
    assertThat(result(asked("bread", "US")).entries().get(1).grams()).isEqualTo(350.0);
  }

  @Test
  void little_added_water_is_left_out_in_the_EU_and_said_so() {
    // 1070 g bake to 749 g; 749 - 720 = 29 g, 3.9 %
    Answer<IngredientList.Result> answer = answer(read(asked("rusk", "EU")));
    assertThat(answer.result().text()).doesNotContain("water");
    assertThat(answer.remarks())
        .filteredOn(r -> r.code().equals("added-water"))
        .extracting(Remark::message)
        .containsExactly(
            "after baking, added water is 3.9 % of the product; up to 5 % it is left out of the list");
  }

  @Test
  void a_loss_that_is_given_stands_in_place_of_the_formulas_own() {
    Map<String, Object> input = asked("bread", "EU");
    input.put("loss", 0.2);
    assertThat(result(input).finishedGrams()).isEqualTo(860.0, within(1e-9));
  }

  @Test
  void names_of_a_shop_are_made_harmless_in_HTML() {
    Map<String, Object> formula = Bakery.formula("jar", Map.of(), "own-spread 100 g");
    IngredientList.Result result = result(asked(formula, "EU"));
    assertThat(result.html())
        .isEqualTo(
            "Nut &amp; &quot;<strong>milk</strong>&quot; &lt;spread&gt; (<strong>hazelnut</strong>)");
    assertThat(result.text()).isEqualTo("Nut & \"MILK\" <spread> (HAZELNUT)");
  }

  @Test
  void a_named_ingredient_that_is_not_there_is_refused() {
    Map<String, Object> input = asked("bread", "EU");
    input.put("named", List.of("bread-flour", "walnut", "sultana"));
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> result(input))
        .satisfies(
            refusal ->
                assertThat(refusal.faults())
                    .extracting(fault -> fault.pointer())
                    .containsExactly("/named/1", "/named/2"));
  }

  @Test
  void a_loss_of_everything_is_refused() {
    Map<String, Object> input = asked("bread", "EU");
    input.put("loss", 1);
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> read(input))
        .satisfies(refusal -> assertThat(refusal.faults().get(0).pointer()).isEqualTo("/loss"));
  }

  @Test
  void cautions_stand_beside_every_list() {
    assertThat(answer(read(asked("bread", "US"))).remarks())
        .filteredOn(r -> r.kind() == Remark.Kind.CAUTION)
        .extracting(Remark::code)
        .contains("list-is-a-draft", "cross-contact-unknown");
  }
}
