package tamis.plugin.equivalents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Row;
import tamis.plugin.equivalents.Equivalents.Input;
import tamis.plugin.equivalents.Equivalents.Result;

class EquivalentsTest extends CalculationContract<Input, Result> {
  @Override
  protected Calculation<Input, Result> calculation() {
    return new Equivalents();
  }

  @Override
  protected Plugin plugin() {
    return new EquivalentsPlugin();
  }

  @ParameterizedTest(name = "{0} of {1} is {4} g of {2} ({7})")
  @CsvFileSource(resources = "/equivalents.csv", numLinesToSkip = 1)
  void equivalents_match_the_worked_examples(
      String quantity,
      String ingredient,
      String into,
      double low,
      double typical,
      double high,
      double tolerance,
      String source) {
    Result result = result(input(quantity, ingredient, into));

    assertThat(result.gramsLow()).as(source).isCloseTo(low, within(tolerance));
    assertThat(result.grams()).as(source).isCloseTo(typical, within(tolerance));
    assertThat(result.gramsHigh()).as(source).isCloseTo(high, within(tolerance));
    assertThat(result.from()).isEqualTo(ingredient);
    assertThat(result.into()).isEqualTo(into);
  }

  @ParameterizedTest(name = "{0} of {1} as {2}: {4} g of {3} ({6})")
  @CsvFileSource(resources = "/equivalents-with.csv", numLinesToSkip = 1)
  void what_else_changes_matches_the_worked_examples(
      String quantity,
      String ingredient,
      String into,
      String with,
      double grams,
      double tolerance,
      String source) {
    assertThat(result(input(quantity, ingredient, into)).alsoAdd())
        .filteredOn(also -> also.ingredient().equals(with))
        .singleElement()
        .satisfies(also -> assertThat(also.grams()).as(source).isCloseTo(grams, within(tolerance)));
  }

  @Test
  void there_and_back_is_the_same() {
    Random random = new Random(20260508);
    for (Row row : Pair.TABLE.rows()) {
      if (row.yes("one_way")) {
        continue;
      }
      double grams = 1 + 999 * random.nextDouble();
      Result there = result(input(grams + " g", row.text("from"), row.text("into")));
      Result back = result(input(there.grams() + " g", row.text("into"), row.text("from")));

      assertThat(back.grams()).as(row.key()).isCloseTo(grams, within(1e-9 * grams));
      assertThat(back.alsoAdd()).hasSameSizeAs(there.alsoAdd());
      for (int i = 0; i < there.alsoAdd().size(); i++) {
        assertThat(back.alsoAdd().get(i).grams())
            .as(row.key())
            .isCloseTo(-there.alsoAdd().get(i).grams(), within(1e-9 * grams));
      }
    }
  }

  @Test
  void yeast_over_its_third_form_comes_out_within_the_spread() {
    Result direct = result(input("100 g", "yeast-fresh", "yeast-instant"));
    Result half = result(input("100 g", "yeast-fresh", "yeast-active-dry"));
    Result whole = result(input(half.grams() + " g", "yeast-active-dry", "yeast-instant"));

    assertThat(whole.grams()).isBetween(direct.gramsLow(), direct.gramsHigh());
    assertThat(whole.grams()).isCloseTo(direct.grams(), within(0.5));
  }

  @Test
  void a_weaker_gelatine_takes_more() {
    Map<String, Object> input = input("10 g", "gelatine-powder", "gelatine-leaf");
    input.put("bloom", 240.0);
    input.put("intoBloom", 160.0);

    Result result = result(input);

    assertThat(result.grams()).isCloseTo(10 * Math.sqrt(1.5), within(1e-9));
    assertThat(result.gramsHigh()).as("in plain proportion").isCloseTo(15, within(1e-9));
    assertThat(result.gramsLow()).isEqualTo(result.grams());
    assertThat(codes(input)).doesNotContain("bloom-assumed").contains("bloom-rule");
  }

  @Test
  void a_grade_stands_for_its_bloom_and_the_mass_of_its_leaf() {
    Map<String, Object> input = input("5 leaf", "gelatine-leaf", "gelatine-powder");
    input.put("state", "bronze");
    input.put("intoBloom", 225.0);

    Result result = result(input);

    assertThat(result.fromGrams()).isCloseTo(16.5, within(1e-9));
    assertThat(result.grams()).isCloseTo(16.5 * Math.sqrt(140.0 / 225), within(1e-9));
    assertThat(codes(input)).doesNotContain("bloom-assumed");
  }

  @Test
  void a_bloom_that_is_not_told_is_assumed_and_said() {
    assertThat(answer(read(input("10 g", "gelatine-leaf", "gelatine-powder"))).remarks())
        .filteredOn(remark -> remark.code().equals("bloom-assumed"))
        .extracting(Remark::pointer)
        .containsExactly("/bloom", "/intoBloom");
  }

  @Test
  void leaf_stands_for_leaf_whatever_the_grade() {
    Map<String, Object> input = input("6 leaf", "gelatine-leaf", "gelatine-leaf");
    input.put("state", "silver");
    input.put("intoState", "gold");

    Result result = result(input);

    assertThat(result.pieces()).isCloseTo(6, within(1e-9));
    assertThat(result.grams()).isCloseTo(12, within(1e-9));
    assertThat(result.gramsLow()).isLessThanOrEqualTo(result.grams());
    assertThat(result.gramsHigh()).isGreaterThan(result.grams());
  }

  @Test
  void leaves_and_eggs_are_told_in_pieces_too() {
    assertThat(result(input("20 g", "gelatine-powder", "gelatine-leaf")).pieces())
        .isCloseTo(10 * Math.sqrt(225.0 / 200), within(1e-9));
    assertThat(result(input("3 each", "egg-medium", "egg")).pieces()).isCloseTo(2.64, within(1e-9));
    assertThat(result(input("42 g", "yeast-fresh", "yeast-instant")).pieces()).isNull();
  }

  @Test
  void eggs_of_any_size_have_the_forms_of_egg() {
    Result medium = result(input("10 each", "egg-eu-m", "egg-powder"));

    assertThat(medium.grams()).isCloseTo(510 * 0.2453, within(1e-6));
    assertThat(medium.from()).isEqualTo("egg-eu-m");
  }

  @Test
  void alkalised_cocoa_changes_the_leavening() {
    assertThat(remark(input("30 g", "cocoa-powder", "cocoa-powder-alkalised")))
        .contains("baking powder");
    assertThat(remark(input("30 g", "cocoa-powder-alkalised", "cocoa-powder")))
        .contains("baking soda");
  }

  @Test
  void practice_is_an_estimate_and_composition_is_not() {
    assertThat(codes(input("42 g", "yeast-fresh", "yeast-instant"))).contains("common-practice");
    assertThat(codes(input("42 g", "egg", "egg-powder"))).doesNotContain("common-practice");
  }

  @Test
  void an_unknown_pair_is_refused_with_the_pairs_that_are_known() {
    Fault fault = refused(input("42 g", "yeast-fresh", "baking-powder"));

    assertThat(fault.code()).isEqualTo(FaultCode.NOT_ALLOWED);
    assertThat(fault.pointer()).isEqualTo("/into");
    assertThat(fault.given()).isEqualTo("baking-powder");
    assertThat(fault.allowed()).isEqualTo("yeast-active-dry, yeast-instant");
  }

  @Test
  void what_goes_one_way_only_is_refused_the_other_way() {
    Fault fault = refused(input("240 g", "milk-whole", "buttermilk"));

    assertThat(fault.pointer()).isEqualTo("/into");
    assertThat(fault.allowed()).contains("milk-powder-whole").doesNotContain("buttermilk");
  }

  @Test
  void an_ingredient_without_other_forms_is_refused_with_those_that_have() {
    Fault fault = refused(input("42 g", "caraway-seed", "yeast-instant"));

    assertThat(fault.pointer()).isEqualTo("/ingredient");
    assertThat(fault.allowed()).contains("yeast-fresh").contains("gelatine-leaf");
  }

  @Test
  void the_same_in_its_own_place_is_refused() {
    assertThat(refused(input("42 g", "yeast-fresh", "yeast-fresh")).pointer()).isEqualTo("/into");
    assertThat(refused(input("2 each", "egg", "egg")).pointer()).isEqualTo("/into");
    assertThat(refused(input("2 g", "gelatine-leaf", "gelatine-leaf")).pointer())
        .isEqualTo("/into");
  }

  @Test
  void an_unknown_grade_is_refused_with_those_that_are_known() {
    Map<String, Object> input = input("10 g", "gelatine-powder", "gelatine-leaf");
    input.put("intoState", "tin");

    Fault fault = refused(input);

    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_STATE);
    assertThat(fault.pointer()).isEqualTo("/intoState");
    assertThat(fault.allowed()).isEqualTo("bronze, silver, gold, platinum");
  }

  @Test
  void bloom_of_what_is_no_gelatine_is_refused() {
    Map<String, Object> input = input("10 g", "yeast-fresh", "yeast-instant");
    input.put("bloom", 200.0);
    input.put("intoBloom", 200.0);
    input.put("intoState", "gold");

    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));

    assertThat(refusal.faults())
        .extracting(Fault::pointer)
        .containsExactly("/bloom", "/intoBloom", "/intoState");
  }

  @Test
  void a_bloom_beyond_all_gelatines_is_refused() {
    Map<String, Object> input = input("10 g", "gelatine-powder", "gelatine-leaf");
    input.put("bloom", 25.0);

    assertThat(refused(input).code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
  }

  @Test
  void as_needed_is_no_amount() {
    Fault fault = refused(input("as needed", "yeast-fresh", "yeast-instant"));

    assertThat(fault.code()).isEqualTo(FaultCode.WRONG_DIMENSION);
    assertThat(fault.pointer()).isEqualTo("/quantity");
  }

  @Test
  void a_quantity_that_cannot_be_weighed_is_refused_where_it_stands() {
    Fault fault = refused(input("3 each", "milk-whole", "milk-powder-whole"));

    assertThat(fault.code()).isEqualTo(FaultCode.NO_PIECE_MASS);
    assertThat(fault.pointer()).isEqualTo("/quantity");
  }

  private static Map<String, Object> input(String quantity, String ingredient, String into) {
    Map<String, Object> input = new LinkedHashMap<>();
    input.put("quantity", quantity);
    input.put("ingredient", ingredient);
    input.put("into", into);
    input.put("measures", "metric");
    return input;
  }

  private List<String> codes(Map<String, ?> input) {
    return answer(read(input)).remarks().stream().map(Remark::code).toList();
  }

  private String remark(Map<String, ?> input) {
    return answer(read(input)).remarks().stream()
        .filter(remark -> remark.code().equals("what-changes"))
        .map(Remark::message)
        .findFirst()
        .orElseThrow();
  }

  private Fault refused(Map<String, ?> input) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal.faults()).hasSize(1);
    return refusal.faults().get(0);
  }
}
