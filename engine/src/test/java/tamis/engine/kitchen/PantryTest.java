package tamis.engine.kitchen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.pan.PanRef;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Reference;

/** What the kitchen finds by its name: the shop's own documents first, then what is built in. */
class PantryTest {
  private static final Pantry BUILT_IN = new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of()));

  private static Ingredient document(String id, String... names) {
    return read(
        Ingredient.class,
        Map.of("id", id, "names", Map.of("en", List.of(names)), "source", "weighed here"));
  }

  private static Formula formula(String id) {
    return read(
        Formula.class,
        Map.of(
            "id",
            id,
            "title",
            "A dough",
            "lines",
            List.of(Map.of("ingredient", "bread-flour", "quantity", "1 kg"))));
  }

  private static <T extends Record> T read(Class<T> type, Map<String, ?> tree) {
    return new RecordReader(BUILT_IN, Limits.usual()).read(type, tree);
  }

  private static Pantry shop(Ingredient... own) {
    return new Pantry(
        Shelf.of(List.of(formula("day-loaf"), formula("seed-loaf")), List.of(own)),
        Pantry.Fittings.of(List.of()));
  }

  private static Fault refusal(Callable<?> look) {
    List<Fault> faults = catchThrowableOfType(Refusal.class, look::call).faults();
    assertThat(faults).hasSize(1);
    return faults.get(0);
  }

  private static IngredientRef named(String name) {
    return IngredientRef.parse(name);
  }

  @Test
  void a_shops_own_document_stands_in_for_the_built_in_one() {
    Ingredient own = document("bread-flour", "Sedgefoot bread flour");
    assertThat(shop(own).ingredient(named("bread-flour"))).isSameAs(own);
    assertThat(shop(own).ingredient(named("strong flour"))).as("by a built-in name").isSameAs(own);
    assertThat(shop(own).ingredient(named("sedgefoot  BREAD flour"))).isSameAs(own);
    assertThat(BUILT_IN.ingredient(named("bread-flour"))).isNotEqualTo(own);
  }

  @Test
  void a_shops_own_name_goes_before_a_built_in_name_but_not_before_an_id() {
    Ingredient cultured = document("shop-butter", "butter", "honey");
    assertThat(BUILT_IN.ingredient(named("butter")).id()).isEqualTo("butter-unsalted");
    assertThat(shop(cultured).ingredient(named("butter"))).isSameAs(cultured);
    assertThat(shop(cultured).ingredient(named("honey")).id()).isEqualTo("honey");
  }

  @Test
  void two_of_a_shops_own_documents_with_one_name_are_both_told() {
    Pantry shop = shop(document("starter-rye", "starter"), document("starter-wheat", "Starter"));
    Fault fault = refusal(() -> shop.ingredient(named("starter")));
    assertThat(fault.code()).isEqualTo(FaultCode.AMBIGUOUS_INGREDIENT);
    assertThat(fault.allowed()).isEqualTo("starter-rye, starter-wheat");
  }

  @Test
  void a_formula_is_found_by_id_by_revision_or_is_given_whole() {
    Pantry shop = shop();
    Formula given = formula("guest-loaf");
    assertThat(shop.formula(FormulaRef.parse("day-loaf")).id()).isEqualTo("day-loaf");
    assertThat(shop.formula(FormulaRef.parse("day-loaf@1")).id()).isEqualTo("day-loaf");
    assertThat(shop.formula(FormulaRef.of(given))).isSameAs(given);
    assertThat(shop.revision()).isEqualTo(1);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "day-loaves, no formula `day-loaves`; did you mean day-loaf?",
    "zzz, no formula `zzz`",
    "day-loaf@2, formula `day-loaf` has no revision 2",
    "zzz@2, no formula `zzz`"
  })
  void a_formula_that_is_not_there_is_refused_with_what_may_be_meant(String id, String message) {
    Fault fault = refusal(() -> shop().formula(FormulaRef.parse(id)));
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(fault.message()).isEqualTo(message);
    assertThat(fault.given()).isEqualTo(id);
  }

  @Test
  void a_table_is_found_by_its_name_and_its_rows_name_their_works() {
    var units = BUILT_IN.table("units");
    assertThat(units.source(units.rows().get(0)).title()).isNotBlank();
    assertThat(BUILT_IN.table("sources").row("ucum")).isNotNull();
    Fault fault = refusal(() -> BUILT_IN.table("unit"));
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_TABLE);
    assertThat(fault.message()).isEqualTo("no table `unit`; did you mean units?");
  }

  @Test
  void a_calculation_that_no_plugin_brings_is_refused() {
    Fault fault = refusal(() -> BUILT_IN.calculate("scaling", Map.of()));
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_CALCULATION);
  }

  @Test
  void references_are_checked_without_being_opened() {
    Pantry shop = shop();
    shop.check(named("egg"));
    shop.check(FormulaRef.parse("day-loaf"));
    shop.check(PanRef.parse("round-8x2-in"));
    assertThat(refusal(() -> check(shop, named("eg-yolk"))).code())
        .isEqualTo(FaultCode.UNKNOWN_INGREDIENT);
    assertThat(refusal(() -> check(shop, FormulaRef.parse("zzz"))).code())
        .isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(refusal(() -> check(shop, PanRef.parse("round-8x2-inn"))).code())
        .isEqualTo(FaultCode.UNKNOWN_PAN);
  }

  private static Object check(Pantry pantry, Reference reference) {
    pantry.check(reference);
    return pantry;
  }

  @Test
  void a_formula_on_a_shelf_needs_an_id() {
    Formula nameless =
        read(
            Formula.class,
            Map.of("lines", List.of(Map.of("ingredient", "water", "quantity", "1 kg"))));
    assertThat(
            catchThrowableOfType(
                IllegalArgumentException.class, () -> Shelf.of(List.of(nameless), List.of())))
        .hasMessage("a formula on a shelf needs an id");
  }
}
