package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.engine.formula.Card.map;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;

/** Every way of saying how much to make. */
class SizingTest {
  private static final double EXACT = 1e-9;

  /** 100 g of flour and 100 g of butter: what is made of it is easily seen. */
  private static Card sand() {
    return Card.of("sand", "100 g all-purpose-flour", "100 g butter-unsalted");
  }

  private static double factor(Object formula, Object... to) {
    return new Bench().batch(formula, to).factor();
  }

  @Test
  void as_written_unless_told() {
    assertThat(factor(sand())).isEqualTo(1);
  }

  @Test
  void by_factor_mass_portions_pieces_and_flour() {
    Card sand = sand().yield("portions", 8.0, "makeUpLoss", "10 %");
    assertThat(factor(sand, "factor", 2.5)).isEqualTo(2.5);
    assertThat(factor(sand, "mass", "360 g")).isEqualTo(2, within(EXACT));
    assertThat(factor(sand, "portions", 40.0)).isEqualTo(5, within(EXACT));
    assertThat(factor(sand, "pieces", 9.0, "pieceMass", "40 g")).isEqualTo(2, within(EXACT));
    assertThat(factor(sand, "flour", "1 kg")).isEqualTo(10, within(EXACT));
  }

  @Test
  void a_baked_mass_is_after_both_losses() {
    Card loaf = sand().yield("makeUpLoss", 0.1, "bakeLoss", 0.5);
    assertThat(factor(loaf, "mass", "90 g", "basis", "baked")).isEqualTo(1, within(EXACT));
    assertThat(factor(loaf, "mass", "90 g", "basis", "raw")).isEqualTo(0.5, within(EXACT));
    assertThat(factor(loaf, "pieces", 2.0, "pieceMass", "90 g", "basis", "baked"))
        .isEqualTo(2, within(EXACT));
  }

  @Test
  void a_basis_without_a_mass_is_refused() {
    Fault fault = new Bench().fault(sand(), "factor", 2.0, "basis", "baked");
    assertThat(fault.code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(fault.pointer()).isEqualTo("/to/basis");
  }

  // pans ------------------------------------------------------------------------------------

  /** A round tin that holds exactly one litre: 10 cm high over 100 cm². */
  private static Map<String, Object> litre() {
    return map("shape", "square", "side", "10 cm", "height", "10 cm");
  }

  private static Map<String, Object> pan(Object... namesAndValues) {
    Map<String, Object> pan = map("pan", litre());
    pan.putAll(map(namesAndValues));
    return pan;
  }

  @Test
  void by_the_mass_for_one_pan() {
    assertThat(factor(sand(), "pans", List.of(pan("count", 3L, "mass", "400 g"))))
        .isEqualTo(6, within(EXACT));
    Card half = sand().yield("bakeLoss", 0.5);
    assertThat(factor(half, "pans", List.of(pan("mass", "400 g")), "basis", "baked"))
        .isEqualTo(4, within(EXACT));
  }

  @Test
  void by_volume_in_proportion_to_the_pans_of_the_yield() {
    Card cake = sand().yield("pans", List.of(pan("count", 2L)));
    Object wanted = map("pan", map("shape", "square", "side", "20 cm", "height", "10 cm"));
    assertThat(factor(cake, "pans", List.of(wanted))).isEqualTo(2, within(EXACT));
    assertThat(factor(cake, "pans", List.of(wanted, pan()))).isEqualTo(2.5, within(EXACT));
  }

  @Test
  void the_proportion_comes_before_the_fill_and_a_remark_says_so() {
    Card cake = sand().yield("pans", List.of(pan()), "batterDensity", "0.5 g/ml");
    Batch batch = new Bench().batch(cake, "pans", List.of(pan("count", 3L, "fill", 0.5)));
    assertThat(batch.factor()).isEqualTo(3, within(EXACT));
    assertThat(batch.remarks())
        .extracting(Remark::code, Remark::pointer)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("fill-not-used", "/to/pans/0/fill"));
  }

  @Test
  void by_fill_and_density_of_the_batter() {
    Card cake = sand().yield("batterDensity", "0.5 g/ml", "makeUpLoss", 0.5);
    assertThat(factor(cake, "pans", List.of(pan("count", 2L, "fill", 0.6))))
        .as("2 × 1000 ml × 0.6 × 0.5 g/ml are 600 g, of 100 g after make-up")
        .isEqualTo(6, within(EXACT));
  }

  @Test
  void a_pan_that_cannot_size_names_the_three_ways_for_every_pan() {
    Card cake = sand().yield("batterDensity", "0.5 g/ml");
    List<Fault> faults = new Bench().faults(cake, "pans", List.of(pan(), pan("fill", 0.5), pan()));
    assertThat(faults).extracting(Fault::code).containsOnly(FaultCode.NO_SIZE);
    assertThat(faults).extracting(Fault::pointer).containsExactly("/to/pans/0", "/to/pans/2");
    assertThat(faults.get(0).message()).contains("mass", "yield.pans", "fill", "batterDensity");
  }

  @Test
  void mass_and_fill_of_one_pan_are_refused_together() {
    Fault fault = new Bench().fault(sand(), "pans", List.of(pan("mass", "1 g", "fill", 0.5)));
    assertThat(fault.code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(fault.pointer()).isEqualTo("/to/pans/0/fill");
  }

  @Test
  void pans_of_the_table_are_named_as_sources_of_the_factor() {
    Card cake = sand().yield("pans", List.of(map("pan", "round-8x2-in")));
    Batch batch = new Bench().batch(cake, "pans", List.of(map("pan", "round-9x2-in")));
    assertThat(batch.sources())
        .filteredOn(source -> source.table().equals("pans"))
        .extracting(Cited::row, Cited::pointers)
        .containsExactlyInAnyOrder(
            org.assertj.core.groups.Tuple.tuple("round-8x2-in", List.of("/factor")),
            org.assertj.core.groups.Tuple.tuple("round-9x2-in", List.of("/factor")));
  }

  @Test
  void what_must_be_said_of_a_pan_of_the_formula_points_into_the_document_that_was_given() {
    Map<String, Object> ring =
        map("shape", "ring", "diameter", "20 cm", "core", "5 cm", "height", "8 cm");
    Card cake = sand().yield("pans", List.of(pan(), map("pan", ring)));
    Object wanted = List.of(map("pan", ring), pan());
    assertThat(new Bench().batch(cake, "pans", wanted).remarks())
        .extracting(Remark::pointer)
        .containsExactlyInAnyOrder("/to/pans/0/pan", "/formula/yield/pans/1/pan");
    assertThat(Bench.with(cake).batch("sand", "pans", wanted).remarks())
        .extracting(Remark::pointer)
        .containsExactlyInAnyOrder("/to/pans/0/pan", "/formula");
  }

  // coat ------------------------------------------------------------------------------------

  private static Map<String, Object> coat() {
    Map<String, Object> cake =
        map("shape", "square", "side", "20 cm", "layers", 2L, "layerHeight", "5 cm");
    return map("cake", cake, "top", "1 cm", "side", "0 cm", "between", "1 cm");
  }

  @Test
  void by_the_volume_of_a_coat_and_the_density_of_the_finished_cream() {
    Card cream = sand().yield("density", "0.5 g/ml", "makeUpLoss", 0.5);
    assertThat(factor(cream, "coat", coat()))
        .as("400 cm² under 1 cm twice are 800 ml, 400 g, of 100 g finished")
        .isEqualTo(4, within(EXACT));
  }

  @Test
  void a_coat_of_a_formula_without_density_is_refused() {
    Fault fault = new Bench().fault(sand(), "coat", coat());
    assertThat(fault.code()).isEqualTo(FaultCode.NO_DENSITY);
    assertThat(fault.pointer()).isEqualTo("/to/coat");
    assertThat(fault.message()).contains("yield.density");
  }

  // line ------------------------------------------------------------------------------------

  private static Bench eclairs() {
    return Bench.with(
        Card.of("eclairs", "200 g >choux", "400 g >cream", "50 g egg"),
        Card.of("choux", "100 g egg", "100 g all-purpose-flour"),
        Card.of("cream", "300 g milk-whole", "100 g sugar-granulated"));
  }

  @Test
  void by_the_total_of_an_ingredient_over_all_parts() {
    Object line = map("ingredient", "egg", "quantity", "6 each");
    assertThat(eclairs().batch("eclairs", "line", line).factor()).isEqualTo(2, within(EXACT));
  }

  @Test
  void by_one_line_of_the_formula_or_of_a_part() {
    Object own = map("path", "/lines/2", "quantity", "3 each");
    assertThat(eclairs().batch("eclairs", "line", own).factor()).isEqualTo(3, within(EXACT));
    Object inner = map("path", "/lines/0/lines/0", "quantity", "150 g");
    assertThat(eclairs().batch("eclairs", "line", inner).factor()).isEqualTo(1.5, within(EXACT));
  }

  @Test
  void by_the_finished_mass_or_batches_of_a_part() {
    Object mass = map("path", "/lines/1", "quantity", "1 kg");
    assertThat(eclairs().batch("eclairs", "line", mass).factor()).isEqualTo(2.5, within(EXACT));
    Object batches = map("path", "/lines/0", "quantity", "3 batch");
    assertThat(eclairs().batch("eclairs", "line", batches).factor()).isEqualTo(3, within(EXACT));
  }

  @Test
  void an_ingredient_is_counted_in_parts_that_are_made_larger_or_smaller() {
    Bench bench =
        Bench.with(
            Card.of("tart", "50 g >cream", "10 g egg"),
            Card.of("cream", "300 g milk-whole", "80 g >base").yield("makeUpLoss", 0.5),
            Card.of("base", "100 g egg", "60 g honey"));
    Object line = map("ingredient", "egg", "quantity", "23.15789473684 g");
    assertThat(bench.batch("tart", "line", line).factor())
        .as("10 g, and 50 of 190 g of cream with half of 100 g")
        .isEqualTo(1, within(1e-6));
    Object path = map("path", "/lines/0/lines/1/lines/0", "quantity", "26.31578947368 g");
    assertThat(bench.batch("tart", "line", path).factor()).isEqualTo(2, within(1e-6));
    Object stock = List.of(have("ingredient", "egg", "46.31578947368 g"));
    assertThat(bench.batch("tart", "stock", stock).factor()).isEqualTo(2, within(1e-6));
  }

  @Test
  void an_ingredient_or_path_that_is_not_there_is_refused() {
    Fault ingredient =
        eclairs().fault("eclairs", "line", map("ingredient", "honey", "quantity", "1 g"));
    assertThat(ingredient.pointer()).isEqualTo("/to/line/ingredient");
    assertThat(ingredient.code()).isEqualTo(FaultCode.UNKNOWN_INGREDIENT);
    for (String path : List.of("/lines/9", "lines/0", "/lines/0/lines/7", "/lines/2/lines/0", "")) {
      Fault fault = eclairs().fault("eclairs", "line", map("path", path, "quantity", "1 g"));
      assertThat(fault.pointer()).isEqualTo("/to/line/path");
      assertThat(fault.code()).isEqualTo(FaultCode.NO_SUCH_VALUE);
    }
  }

  @Test
  void a_fixed_line_needs_an_amount_of_its_own() {
    for (String quantity : List.of("50 %", "as needed", "0 g", "0 each")) {
      Fault fault =
          eclairs().fault("eclairs", "line", map("ingredient", "egg", "quantity", quantity));
      assertThat(fault.pointer()).as(quantity).isEqualTo("/to/line/quantity");
      Fault part =
          eclairs().fault("eclairs", "line", map("path", "/lines/0", "quantity", quantity));
      assertThat(part.pointer()).as(quantity).isEqualTo("/to/line/quantity");
    }
  }

  @Test
  void a_line_as_needed_cannot_fix_the_batch() {
    Card card = Card.of("tin", "100 g egg", "as needed butter-unsalted");
    Fault fault = new Bench().fault(card, "line", map("path", "/lines/1", "quantity", "5 g"));
    assertThat(fault.code()).isEqualTo(FaultCode.NO_SIZE);
    assertThat(fault.pointer()).isEqualTo("/to/line/path");
  }

  // stock -----------------------------------------------------------------------------------

  private static Object have(String kind, String name, String quantity) {
    return map(kind, name, "quantity", quantity);
  }

  @Test
  void by_what_is_on_hand_the_scarcest_first() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "5 each"), have("ingredient", "milk", "2 l")));
    assertThat(batch.limitedBy()).as("250 g of 150 g").isEqualTo("egg");
    assertThat(batch.factor()).isEqualTo(250 / 150.0, within(EXACT));
    Batch other =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "5 each"), have("ingredient", "milk", "300 g")));
    assertThat(other.limitedBy()).as("and the last if it is scarcer").isEqualTo("milk-whole");
    assertThat(other.factor()).isEqualTo(1, within(EXACT));
  }

  @Test
  void a_finished_part_on_hand_is_used_and_its_ingredients_are_not_asked_for() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(
                    have("ingredient", "milk-whole", "1 g"), have("formula", "cream", "0.8 kg")));
    assertThat(batch.limitedBy()).isEqualTo("cream");
    assertThat(batch.factor()).isEqualTo(2, within(EXACT));
    assertThat(Bench.codes(batch)).contains("not-needed");
  }

  @Test
  void the_same_thing_on_hand_twice_is_added_up() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "100 g"), have("ingredient", "egg", "1 each")));
    assertThat(batch.factor()).isEqualTo(1, within(EXACT));
  }

  @Test
  void eggs_on_hand_are_opened_for_yolks_and_whites() {
    Bench bench =
        Bench.with(
            Card.of("cream", "51 g egg-yolk", "50 g egg", "66 g >foam"),
            Card.of("foam", "66 g egg-white"));
    Batch batch = bench.batch("cream", "stock", List.of(have("ingredient", "egg", "12 each")));
    assertThat(batch.factor()).as("three opened and one whole").isEqualTo(3, within(EXACT));
    assertThat(batch.limitedBy()).isEqualTo("egg");
    Object both =
        List.of(have("ingredient", "egg", "12 each"), have("ingredient", "egg-yolk", "510 g"));
    assertThat(bench.batch("cream", "stock", both).factor())
        .as("yolks are on hand, so two are opened and one is whole")
        .isEqualTo(4, within(EXACT));
  }

  @Test
  void of_two_that_are_used_up_together_the_first_is_named() {
    for (String first : List.of("egg", "milk-whole")) {
      String other = first.equals("egg") ? "milk-whole" : "egg";
      String much = first.equals("egg") ? "150 g" : "300 g";
      String more = first.equals("egg") ? "300 g" : "150 g";
      Batch batch =
          eclairs()
              .batch(
                  "eclairs",
                  "stock",
                  List.of(have("ingredient", first, much), have("ingredient", other, more)));
      assertThat(batch.limitedBy()).isEqualTo(first);
      assertThat(batch.factor()).isEqualTo(1, within(EXACT));
    }
  }

  @Test
  void nothing_useful_or_nothing_at_all_on_hand_is_refused() {
    Fault useless =
        eclairs().fault("eclairs", "stock", List.of(have("ingredient", "honey", "1 kg")));
    assertThat(useless.code()).isEqualTo(FaultCode.NO_SIZE);
    Fault none = eclairs().fault("eclairs", "stock", List.of(have("ingredient", "egg", "0 each")));
    assertThat(none.code()).isEqualTo(FaultCode.IMPOSSIBLE);
    assertThat(none.message()).contains("egg");
  }

  @Test
  void all_faults_of_what_is_on_hand_are_told_with_their_place() {
    assertThat(
            eclairs()
                .faults(
                    "eclairs",
                    "stock",
                    List.of(
                        have("ingredient", "egg", "3 %"),
                        have("formula", "cream", "2 each"),
                        have("formula", "choux", "1 l"),
                        have("ingredient", "milk-whole", "1 kg"),
                        map("formula", Card.of("x", "1 g egg").tree(), "quantity", "1 %"))))
        .extracting(Fault::pointer)
        .containsExactly(
            "/to/stock/0/quantity",
            "/to/stock/1/quantity",
            "/to/stock/2/quantity",
            "/to/stock/4/quantity");
  }

  // what cannot be sized ----------------------------------------------------------------------

  @Test
  void a_formula_wholly_in_percent_needs_a_size_of_its_own() {
    Card loaf = Card.of("loaf", "100 % bread-flour", "65 % water").yield("portions", 4.0);
    Fault none = new Bench().fault(loaf);
    assertThat(none.code()).isEqualTo(FaultCode.NO_SIZE);
    assertThat(none.pointer()).isEqualTo("/to");
    assertThat(new Bench().fault(loaf, "factor", 2.0).pointer()).isEqualTo("/to/factor");
    assertThat(new Bench().fault(loaf, "portions", 2.0).pointer()).isEqualTo("/to/portions");
    assertThat(factor(loaf, "mass", "330 g")).isEqualTo(2, within(EXACT));
    assertThat(factor(loaf, "line", map("ingredient", "water", "quantity", "130 g")))
        .isEqualTo(2, within(EXACT));
    assertThat(factor(loaf, "stock", List.of(have("ingredient", "water", "130 g"))))
        .isEqualTo(2, within(EXACT));
    assertThat(factor(loaf, "pans", List.of(pan("mass", "330 g")))).isEqualTo(2, within(EXACT));
  }

  @Test
  void portions_and_flour_that_the_formula_does_not_have_are_refused() {
    Card cream = Card.of("cream", "100 g milk-whole");
    assertThat(new Bench().fault(cream, "portions", 4.0).pointer()).isEqualTo("/to/portions");
    Fault flour = new Bench().fault(cream, "flour", "1 kg");
    assertThat(flour.code()).isEqualTo(FaultCode.NO_FLOUR);
    assertThat(flour.pointer()).isEqualTo("/to/flour");
  }

  @Test
  void exactly_one_way_is_taken() {
    Fault two = new Bench().fault(sand(), "factor", 2.0, "mass", "1 kg");
    assertThat(two.code()).isEqualTo(FaultCode.EXACTLY_ONE);
    assertThat(two.pointer()).isEqualTo("/to");
    assertThat(two.message()).contains("factor and mass", "coat", "stock");
    Fault half = new Bench().fault(sand(), "pieces", 2.0);
    assertThat(half.code()).isEqualTo(FaultCode.MISSING);
    assertThat(half.pointer()).isEqualTo("/to/pieceMass");
    for (String list : List.of("pans", "stock")) {
      assertThat(new Bench().fault(sand(), list, List.of()).pointer()).isEqualTo("/to/" + list);
    }
  }

  @Test
  void a_size_beyond_all_measure_is_refused() {
    for (Fault fault :
        List.of(
            new Bench().fault(sand(), "mass", "1e9 kg", "basis", "raw"),
            new Bench().fault(Card.of("dust", "1e-7 g salt"), "mass", "1e6 kg"),
            new Bench().fault(sand(), "portions", 0.0))) {
      assertThat(fault.code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
      assertThat(fault.pointer()).startsWith("/to");
    }
  }
}
