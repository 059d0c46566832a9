package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.engine.formula.Card.map;
import static tamis.engine.formula.Sizes.factor;
import static tamis.engine.formula.Sizes.pan;
import static tamis.engine.formula.Sizes.sand;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;

/** So much as goes into pans, or onto a cake. */
class PanSizingTest {
  private static final double EXACT = 1e-9;

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
}
