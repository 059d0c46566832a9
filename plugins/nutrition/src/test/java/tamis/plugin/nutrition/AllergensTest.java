package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class AllergensTest extends CalculationContract<Allergens.Input, Allergens.Result> {
  @Override
  protected Calculation<Allergens.Input, Allergens.Result> calculation() {
    return new Allergens();
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
                "choux",
                Map.of(),
                "water 500 g",
                "butter-unsalted 250 g",
                "all-purpose-flour 300 g",
                "egg 500 g",
                "spelt-flour as needed"))
        .with(Bakery.formula("shells", Map.of("bakeLoss", "40 %"), "=choux 1 kg", "egg as needed"))
        .with(
            Bakery.formula(
                "eclairs",
                Map.of(),
                "=shells 500 g",
                "pistachio 20 g",
                "walnut-ground 10 g",
                "oil-sesame 100 g remains 0",
                "lupin-flour 5 g"))
        .with(Bakery.formula("spelt-bread", Map.of(), "spelt-flour 500 g", "water 300 g"))
        .with(Bakery.formula("syrup", Map.of(), "sugar-granulated 100 g", "water 50 g"))
        .with(Bakery.formula("glazed", Map.of(), "own-nut-mix 10 g", "glucose-syrup 10 g"))
        .withIngredient(
            Map.of(
                "id",
                "own-nut-mix",
                "names",
                Map.of("en", List.of("nut mix")),
                "contains",
                List.of(
                    Map.of("allergen", "tree-nut"),
                    Map.of("allergen", "tree-nut", "species", "Cashews"),
                    Map.of("allergen", "wheat"))))
        .withIngredient(
            Map.of(
                "id",
                "glucose-syrup",
                "names",
                Map.of("en", List.of("glucose syrup")),
                "contains",
                List.of(Map.of("allergen", "cereal-gluten", "species", "wheat"))))
        .open();
  }

  @ParameterizedTest(name = "{0}: {1} {2} named {3}")
  @CsvFileSource(resources = "/allergen-regimes-named.csv", numLinesToSkip = 1)
  void regimes_name_what_their_lists_name(
      String regime, String allergen, String species, String named, String as, String asSpecies) {
    AllergenRegime of = AllergenRegime.of(regime);
    AllergenFact fact = new AllergenFact(allergen(allergen), species);
    AllergenRules.Naming naming = AllergenRules.naming(of, fact);
    if (named.equals("no")) {
      assertThat(naming == null || !naming.isMandatory()).isTrue();
      return;
    }
    assertThat(naming).isNotNull();
    assertThat(naming.isMandatory()).isTrue();
    assertThat(naming.allergen()).isEqualTo(as);
    assertThat(naming.species()).isEqualTo(asSpecies);
  }

  @ParameterizedTest(name = "{0} {1} has the code {2}")
  @CsvFileSource(resources = "/gs1-codes.csv", numLinesToSkip = 1)
  void allergens_have_their_gs1_code(String allergen, String species, String code) {
    AllergenRules.Naming naming =
        new AllergenRules.Naming(AllergenRules.REGIMES.rows().get(0), allergen, species);
    assertThat(naming.code()).isNotNull();
    assertThat(naming.code().text("code")).isEqualTo(code);
  }

  @Test
  void allergens_come_up_through_nested_formulas_with_their_way() {
    Allergens.Result result = result(Map.of("formula", "eclairs", "regime", "EU"));
    assertThat(result.contains())
        .extracting(NamedAllergen::name)
        .contains("milk", "wheat", "eggs", "pistachio", "walnut", "lupin");
    NamedAllergen milk = one(result.contains(), "milk");
    assertThat(milk.via()).containsExactly("shells > choux > butter-unsalted");
    assertThat(milk.paths()).containsExactly("/lines/0/lines/0/lines/1");
    assertThat(milk.gs1()).isEqualTo("AM");
  }

  /** Reg. (EU) 1169/2011 Annex II, 1: "wheat, such as spelt and khorasan wheat". */
  @ParameterizedTest(name = "{1} in {0} is told as {2}")
  @CsvSource({
    "EU, spelt, wheat (spelt)",
    "EU, khorasan, wheat (khorasan)",
    "EU, durum, wheat (durum)",
    "UK, spelt, wheat (spelt)",
    "UK, triticale, wheat and rye (triticale)",
    "US, spelt, wheat",
    "CA, spelt, wheat"
  })
  void a_kind_of_wheat_is_told_as_wheat(String regime, String kind, String told) {
    AllergenFact fact = new AllergenFact(allergen("cereal-gluten"), kind);
    AllergenRules.Naming naming = AllergenRules.naming(AllergenRegime.of(regime), fact);
    assertThat(naming).isNotNull();
    assertThat(naming.name()).isEqualTo(told);
  }

  @Test
  void the_statement_names_wheat_for_its_kinds() {
    assertThat(result(Map.of("formula", "spelt-bread", "regime", "EU")).statement())
        .isEqualTo("Contains: wheat (spelt).");
  }

  @Test
  void what_is_dusted_on_or_strained_off_counts() {
    Allergens.Result result = result(Map.of("formula", "eclairs", "regime", "EU"));
    assertThat(one(result.contains(), "wheat (spelt)").via())
        .containsExactly("shells > choux > spelt-flour");
    assertThat(one(result.contains(), "sesame seeds").via()).containsExactly("oil-sesame");
    assertThat(one(result.contains(), "eggs").via())
        .containsExactly("shells > egg", "shells > choux > egg");
  }

  @Test
  void an_allergen_that_is_contained_is_not_said_to_be_perhaps_contained() {
    Allergens.Result result = result(Map.of("formula", "eclairs", "regime", "US"));
    assertThat(result.mayContain()).extracting(NamedAllergen::name).contains("almond", "soybeans");
    assertThat(result.mayContain())
        .extracting(NamedAllergen::key)
        .doesNotContainAnyElementsOf(result.contains().stream().map(NamedAllergen::key).toList());
  }

  @Test
  void wheat_is_one_entry_though_it_is_tagged_twice() {
    Allergens.Result us = result(Map.of("formula", "eclairs", "regime", "US"));
    assertThat(us.contains()).filteredOn(a -> "wheat".equals(a.species())).hasSize(1);
    Allergens.Result eu = result(Map.of("formula", "eclairs", "regime", "EU"));
    assertThat(eu.contains()).filteredOn(a -> "wheat".equals(a.species())).hasSize(1);
    assertThat(one(eu.contains(), "wheat").allergen()).isEqualTo("cereal-gluten");
    assertThat(one(us.contains(), "wheat").allergen()).isEqualTo("wheat");
  }

  @Test
  void what_a_regime_does_not_name_is_told_beside_it() {
    Allergens.Result us = result(Map.of("formula", "eclairs", "regime", "US"));
    assertThat(us.contains()).extracting(NamedAllergen::allergen).doesNotContain("lupin");
    assertThat(us.others()).extracting(Allergens.Other::allergen).contains("lupin");
  }

  @Test
  void a_nut_without_species_is_named_as_nuts_and_remarked() {
    Answer<Allergens.Result> answer = answer(read(Map.of("formula", "glazed", "regime", "US")));
    assertThat(answer.result().contains())
        .extracting(NamedAllergen::name)
        .contains("tree nuts", "cashew", "wheat");
    assertThat(answer.remarks()).extracting(Remark::code).contains("species-missing");
  }

  @Test
  void glucose_syrup_of_wheat_is_exempt_in_the_EU_and_said_so() {
    Allergens.Result eu = result(Map.of("formula", "glazed", "regime", "EU"));
    assertThat(eu.exempt())
        .extracting(Allergens.Exempt::ingredient)
        .containsExactly("glucose-syrup");
    assertThat(one(eu.contains(), "wheat").via()).containsExactly("own-nut-mix");
    Allergens.Result us = result(Map.of("formula", "glazed", "regime", "US"));
    assertThat(us.exempt()).isEmpty();
    assertThat(one(us.contains(), "wheat").via()).containsExactly("own-nut-mix", "glucose-syrup");
  }

  @Test
  void the_statement_names_each_once() {
    assertThat(result(Map.of("formula", "glazed", "regime", "US")).statement())
        .isEqualTo("Contains: tree nuts, cashew, wheat.");
  }

  @ParameterizedTest
  @EnumSource(AllergenRegime.class)
  void nothing_is_ever_said_to_be_absent_or_safe(AllergenRegime regime) {
    for (String formula : List.of("syrup", "eclairs", "glazed")) {
      Answer<Allergens.Result> answer =
          answer(read(Map.of("formula", formula, "regime", regime.toString())));
      String all = (answer.result() + " " + answer.remarks()).toLowerCase(Locale.ROOT);
      assertThat(all).doesNotContain("free from").doesNotContain("-free").doesNotContain("safe");
      assertThat(answer.remarks())
          .filteredOn(r -> r.kind() == Remark.Kind.CAUTION)
          .extracting(Remark::code)
          .containsExactlyInAnyOrder("allergens-by-document", "cross-contact-unknown");
    }
  }

  @Test
  void an_unknown_regime_is_refused_and_the_known_ones_are_named() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> read(Map.of("formula", "syrup", "regime", "Atlantis")))
        .satisfies(
            refusal -> {
              assertThat(refusal.faults()).hasSize(1);
              assertThat(refusal.faults().get(0).pointer()).isEqualTo("/regime");
              assertThat(refusal.faults().get(0).message()).contains("US", "EU", "AU-NZ");
            });
  }

  private static NamedAllergen one(List<NamedAllergen> list, String name) {
    return list.stream().filter(a -> a.name().equals(name)).findFirst().orElseThrow();
  }

  private static Allergen allergen(String key) {
    return Allergen.valueOf(key.toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
