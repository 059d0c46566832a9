package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.engine.formula.Card.map;
import static tamis.engine.formula.Sizes.eclairs;
import static tamis.engine.formula.Sizes.factor;
import static tamis.engine.formula.Sizes.have;
import static tamis.engine.formula.Sizes.pan;
import static tamis.engine.formula.Sizes.sand;

import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;

/** Ways of saying how much to make, but for pans and stock. */
class SizingTest {
  private static final double EXACT = 1e-9;

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
