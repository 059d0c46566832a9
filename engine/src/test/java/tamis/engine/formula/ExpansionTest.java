package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Mass;

/** What a batch consists of. */
class ExpansionTest {
  private static final double EXACT = 1e-9;

  private static Bench bread() {
    return Bench.with(
        Card.of("bread", "800 g bread-flour", "400 g >poolish : role=preferment", "as needed salt"),
        Card.of("poolish", "100 g bread-flour", "100 g water", "1 g >pinch"),
        Card.of("pinch", "10 g yeast-instant"));
  }

  @Test
  void lines_come_in_the_order_of_work_through_the_parts() {
    assertThat(bread().batch("bread").lines())
        .extracting(BatchLine::path)
        .containsExactly(
            "/lines/0",
            "/lines/1/lines/0",
            "/lines/1/lines/1",
            "/lines/1/lines/2/lines/0",
            "/lines/2");
  }

  @Test
  void parts_are_a_tree_with_what_each_is_and_how_often_it_is_made() {
    Part root = bread().batch("bread", "factor", 2.0).root();
    assertThat(Bench.parts(root))
        .extracting(Part::path, part -> part.formula().id(), Part::role)
        .containsExactly(
            Tuple.tuple("", "bread", Role.PART),
            Tuple.tuple("/lines/1", "poolish", Role.PREFERMENT),
            Tuple.tuple("/lines/1/lines/2", "pinch", Role.PART));
    assertThat(Bench.parts(root).get(1).factor()).isEqualTo(800 / 201.0, within(EXACT));
    assertThat(root.lines()).hasSize(2);
    assertThat(root.parts()).hasSize(1);
  }

  @Test
  void the_bill_has_each_ingredient_once_in_the_order_of_its_first_line() {
    Batch batch = bread().batch("bread");
    assertThat(batch.bill())
        .extracting(row -> row.ingredient().id())
        .containsExactly("bread-flour", "water", "yeast-instant", "salt");
    assertThat(Bench.grams(batch, "bread-flour")).isEqualTo(800 + 40000 / 201.0, within(EXACT));
  }

  @Test
  void what_is_taken_as_needed_is_in_the_lines_and_in_the_bill_without_mass() {
    Batch batch = bread().batch("bread");
    BatchLine dusting = Bench.line(batch, "/lines/2");
    assertThat(dusting.isAsNeeded()).isTrue();
    assertThat(dusting.grams().typical()).isZero();
    assertThat(dusting.quantity()).isNull();
    assertThat(Bench.row(batch, "salt").asNeeded()).isTrue();
    assertThat(batch.root().weighed().typical()).isEqualTo(1200, within(EXACT));
  }

  @Test
  void an_ingredient_weighed_once_and_taken_as_needed_once_is_not_as_needed_in_the_bill() {
    Batch batch =
        new Bench().batch(Card.of("pie", "as needed all-purpose-flour", "50 g all-purpose-flour"));
    assertThat(Bench.row(batch, "all-purpose-flour").asNeeded()).isFalse();
    Batch other =
        new Bench()
            .batch(Card.of("pie", "50 g rye-flour", "as needed rye-flour", "as needed salt"));
    assertThat(Bench.row(other, "rye-flour").asNeeded()).isFalse();
    Batch twice =
        new Bench().batch(Card.of("pie", "50 g rye-flour", "as needed salt", "as needed salt"));
    assertThat(Bench.row(twice, "salt").asNeeded()).isTrue();
    assertThat(Bench.grams(batch, "all-purpose-flour")).isEqualTo(50);
  }

  @Test
  void a_line_keeps_its_own_quantity_at_the_new_size() {
    Batch batch =
        new Bench()
            .batch(
                Card.of("cake", "2 1/4 cup all-purpose-flour", "2-3 each egg", "10 % salt"),
                "factor",
                2.0);
    assertThat(Bench.line(batch, "/lines/0").quantity().text()).isEqualTo("4.5 cup");
    assertThat(Bench.line(batch, "/lines/1").quantity().text()).isEqualTo("4-6 each");
    assertThat(Bench.line(batch, "/lines/2").quantity()).isNull();
  }

  @Test
  void the_spread_of_a_density_and_of_a_range_goes_through_to_the_bill() {
    Batch batch =
        Bench.with(
                Card.of("box", "1 kg >cake"),
                Card.of("cake", "8 cup all-purpose-flour", "0 g salt"))
            .batch("box");
    var grams = Bench.row(batch, "all-purpose-flour").grams();
    assertThat(grams.typical()).isEqualTo(1000, within(EXACT));
    assertThat(grams.low()).as("0.48607 of 0.528344 g/ml").isEqualTo(919.987, within(0.001));
    assertThat(grams.high()).as("0.57062 of 0.528344 g/ml").isEqualTo(1080.015, within(0.001));
    Batch range = new Bench().batch(Card.of("x", "100-300 g butter-unsalted"));
    assertThat(range.root().mass().low()).isEqualTo(100);
    assertThat(range.root().mass().typical()).isEqualTo(200);
    assertThat(range.root().mass().high()).isEqualTo(300);
    assertThat(Bench.codes(range)).contains("range");
  }

  @Test
  void a_line_knows_whether_it_is_flour_here() {
    Card card =
        Card.of("cake", "100 g all-purpose-flour", "100 g almond-ground", "5 g cocoa-powder")
            .with("flour", List.of("almond-ground"));
    assertThat(new Bench().batch(card).lines())
        .extracting(BatchLine::flour)
        .containsExactly(true, true, false);
  }

  @Test
  void measures_that_are_not_told_are_taken_as_us_and_a_remark_says_where() {
    Card cake = Card.of("cake", "1 cup water", "1 g salt", "1 tbsp water");
    assertThat(new Bench().batch(cake).remarks())
        .filteredOn(remark -> remark.code().equals("measure-assumed"))
        .extracting(Remark::pointer)
        .containsExactly("/formula/lines/0/quantity", "/formula/lines/2/quantity");
    Batch metric = new Bench().batch(cake.with("measures", "au"));
    assertThat(Bench.codes(metric)).doesNotContain("measure-assumed");
    assertThat(Bench.line(metric, "/lines/0").grams().typical()).isEqualTo(250, within(0.3));
    assertThat(Bench.line(metric, "/lines/2").grams().typical()).isEqualTo(20, within(0.03));
  }

  @Test
  void a_remark_on_a_stored_part_points_at_its_reference_and_names_the_place() {
    Bench bench =
        Bench.with(Card.of("cake", "1 g salt", "5 g >cream"), Card.of("cream", "1 cup water"));
    assertThat(bench.batch(Card.of("box", "1 g >cake")).remarks())
        .extracting(Remark::pointer)
        .containsExactly("/formula/lines/0/formula");
    Remark remark = bench.batch("cake").remarks().get(0);
    assertThat(remark.pointer()).isEqualTo("/formula");
    assertThat(remark.message()).contains("`cream`", "/lines/0/quantity", "`cake`", "/lines/1");
  }

  @Test
  void a_part_used_twice_is_remarked_on_once() {
    Bench bench =
        Bench.with(Card.of("cake", "5 g >cream", "5 g >cream"), Card.of("cream", "1 cup water"));
    assertThat(bench.batch("cake").remarks()).hasSize(1);
    assertThat(bench.batch("cake").lines()).hasSize(2);
  }

  @Test
  void a_bare_egg_is_taken_as_large_and_a_remark_says_so() {
    Batch batch = new Bench().batch(Card.of("cake", "3 each egg"));
    assertThat(Bench.grams(batch, "egg")).isEqualTo(150);
    assertThat(batch.remarks())
        .anySatisfy(
            remark -> {
              assertThat(remark.code()).isEqualTo("size-assumed");
              assertThat(remark.pointer()).isEqualTo("/formula/lines/0/quantity");
              assertThat(remark.message()).contains("50 g", "large");
            });
    assertThat(Bench.codes(new Bench().batch(Card.of("cake", "150 g egg")))).isEmpty();
    assertThat(Bench.codes(new Bench().batch(Card.of("cake", "3 each egg : state=medium"))))
        .isEmpty();
  }

  @Test
  void masses_name_the_rows_they_rest_on_by_the_index_of_their_line() {
    Batch batch =
        new Bench().batch(Card.of("cake", "100 g salt", "1 cup all-purpose-flour", "1 each egg"));
    assertThat(batch.sources())
        .extracting(Cited::table, Cited::row, Cited::pointers)
        .containsExactly(
            Tuple.tuple(
                "densities", "all-purpose-flour/as-measured/cup", List.of("/lines/1/grams")),
            Tuple.tuple("pieces", "egg/each/", List.of("/lines/2/grams")));
  }

  @Test
  void a_shop_that_weighs_its_own_eggs_is_believed_and_cited() {
    Bench bench =
        new Bench()
            .keepIngredient(
                "id", "egg", "names", Card.map("en", List.of("egg")), "pieceMass", "55 g");
    Batch batch = bench.batch(Card.of("cake", "2 each egg"));
    assertThat(Bench.grams(batch, "egg")).isEqualTo(110);
    assertThat(batch.sources())
        .extracting(Cited::table, Cited::row)
        .containsExactly(Tuple.tuple("ingredients", "egg/pieceMass"));
  }

  @Test
  void lines_that_are_changed_change_the_parts_and_the_bill_above_them() {
    Batch batch =
        Bench.with(
                Card.of(
                    "cake", "100 g >cream : remains=0.5", "4 each egg-yolk", "1 each egg-white"),
                Card.of("cream", "150 g milk-whole", "50 g honey").yield("makeUpLoss", 0.5))
            .batch("cake");
    Batch changed =
        batch.withGrams(
            line ->
                List.of("milk-whole", "egg-yolk").contains(line.ingredient().id())
                    ? line.grams().times(2)
                    : line.grams());
    assertThat(Bench.grams(changed, "milk-whole")).isEqualTo(300, within(EXACT));
    assertThat(Bench.part(changed, "cream").finished().typical()).isEqualTo(175, within(EXACT));
    assertThat(changed.root().weighed().typical()).isEqualTo(344, within(EXACT));
    assertThat(changed.root().mass().typical()).isEqualTo(256.5, within(EXACT));
    assertThat(Bench.line(changed, "/lines/1").quantity().text()).isEqualTo("8 each");
    assertThat(Bench.byProducts(changed).get("egg-white")).isEqualTo(231, within(EXACT));
    assertThat(changed.factor()).isEqualTo(batch.factor());
    assertThat(changed.sources()).isEqualTo(batch.sources());
  }

  @Test
  void flour_that_changes_in_a_preferment_changes_the_flour_of_the_bread() {
    Batch batch = bread().batch("bread");
    Batch changed = batch.withGrams(line -> line.grams().times(3));
    assertThat(changed.root().flour()).isEqualTo(3 * batch.root().flour(), within(EXACT));
    assertThat(batch.root().flour()).isEqualTo(800 + 40000 / 201.0, within(EXACT));
    assertThat(changed.factor()).isEqualTo(1);
  }

  @Test
  void a_name_that_takes_something_for_granted_is_remarked_on() {
    assertThat(new Bench().batch(Card.of("cake", "100 g butter")).remarks())
        .extracting(Remark::code, Remark::pointer)
        .containsExactly(Tuple.tuple("name-assumed", "/formula/lines/0/ingredient"));
  }

  @Test
  void a_measured_mass_stays_when_lines_change() {
    Batch batch = new Bench().batch(Card.of("cake", "100 g egg").yield("mass", "80 g"));
    Batch changed = batch.withGrams(line -> line.grams().times(2));
    assertThat(changed.root().madeUp().typical()).isEqualTo(200);
    assertThat(changed.root().finished().typical()).isEqualTo(80);
    assertThat(batch.times(2).root().finished().typical()).isEqualTo(160);
    assertThat(batch.times(2).factor()).isEqualTo(2);
  }

  @Test
  void a_pinned_revision_is_read_as_it_was() {
    Bench bench = Bench.with(Card.of("cake", "5 g >cream@1"), Card.of("cream", "10 g water"));
    assertThat(Bench.grams(bench.batch("cake"), "water")).isEqualTo(5, within(EXACT));
    assertThat(bench.faults("cake@2").get(0).message()).contains("no revision 2");
  }

  @Test
  void a_document_in_the_request_may_hold_documents() {
    Card inner = Card.of("cream", "100 g milk-whole").yield("makeUpLoss", 0.5);
    Batch batch = new Bench().batch(Card.of("cake", "100 g egg").line("100 g", inner));
    assertThat(Bench.grams(batch, "milk-whole")).isEqualTo(200, within(EXACT));
    assertThat(batch.lines()).extracting(BatchLine::path).contains("/lines/1/lines/0");
  }

  @Test
  void a_document_may_be_checked_before_it_is_kept() {
    var kitchen = Bench.with(Card.of("cake", "100 g egg")).kitchen();
    kitchen.check(kitchen.formula(FormulaRef.parse("cake")));
    assertThat(kitchen.batch(FormulaRef.parse("cake"), To.ofMass(Mass.ofKilograms(1))).factor())
        .isEqualTo(10, within(EXACT));
    assertThat(kitchen.ingredient(IngredientRef.parse("EGG")).id()).isEqualTo("egg");
  }
}
