package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** Why a formula cannot be worked out, and where. */
class FormulaFaultsTest {

  @ParameterizedTest(name = "{0}: {1} at {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "1 cup fig | no-density | /quantity",
        "1 each water | no-piece-mass | /quantity",
        "1 leaf all-purpose-flour | no-piece-mass | /quantity",
        "1 cup all-purpose-flour : state=melted | unknown-state | /quantity",
        "3 min water | wrong-dimension | /quantity",
        "20 °C water | wrong-dimension | /quantity",
        "1 batch egg | no-piece-mass | /quantity",
        "1 salt | no-unit | /quantity",
        "10 g unobtainium | unknown-ingredient | /ingredient",
        "10 g molasses | ambiguous-ingredient | /ingredient",
        "10 g >nowhere | unknown-formula | /formula",
        "1 cup >plain | no-density | /quantity",
        "1 each >plain | no-piece-mass | /quantity",
        "1 batch >free | no-piece-mass | /quantity",
        "2 min >plain | no-piece-mass | /quantity",
        "as needed >plain | inconsistent | /quantity",
        "1 g egg : role=scald | inconsistent | /role",
      })
  void a_line_that_cannot_be_meant_is_told_with_its_place(String line, String code, String place) {
    Bench bench =
        Bench.with(Card.of("plain", "10 g salt"), Card.of("free", "100 % bread-flour", "2 % salt"));
    Fault fault = bench.fault(Card.of("cake", "100 g salt", line));
    assertThat(fault.code()).hasToString(code);
    assertThat(fault.pointer()).isEqualTo("/formula/lines/1" + place);
    assertThat(fault.message()).isNotBlank().doesNotContain("Exception", "tamis");
  }

  @ParameterizedTest(name = "{0}: {1}, {2} to {3} is {4} at {5}")
  @CsvSource({
    "heating, temperature, 30 °C, 20 °C, inconsistent, /low",
    "heating, , 86 °F, 20 °C, inconsistent, /low",
    "heating, temperature, 30 g, 40 °C, wrong-dimension, /low",
    "heating, , 30 °C, 40, no-unit, /high",
    "dough, mass, 30 °C, 400 g, wrong-dimension, /low",
    "dough, mass, 1 kg, 400 g, inconsistent, /low"
  })
  void a_window_that_no_reading_can_lie_in_is_refused(
      String kind, String measure, String low, String high, String code, String place) {
    Map<String, Object> target = new HashMap<>(Map.of("kind", kind, "low", low, "high", high));
    if (measure != null) {
      target.put("measure", measure);
    }
    Map<String, Object> formula =
        Map.of(
            "lines",
            List.of(Map.of("ingredient", "water", "quantity", "100 g")),
            "stages",
            List.of(Map.of("id", "warm", "target", target)));
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                new RecordReader(References.UNCHECKED, Limits.usual())
                    .read(Formula.class, formula));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults()).hasSize(1);
    assertThat(refusal.faults().get(0).code()).hasToString(code);
    assertThat(refusal.faults().get(0).pointer()).isEqualTo("/stages/0/target" + place);
  }

  @Test
  void all_faults_of_all_lines_are_told_at_once() {
    Card cake =
        Card.of("cake", "1 cup fig", "10 g salt", "1 each water", "2 batch >free")
            .with("flour", List.of("almond-ground"));
    Bench bench = Bench.with(Card.of("free", "100 % bread-flour", "2 % salt"));
    assertThat(bench.faults(cake))
        .extracting(Fault::pointer)
        .containsExactly(
            "/formula/lines/0/quantity", "/formula/lines/2/quantity", "/formula/lines/3/quantity");
  }

  @Test
  void faults_of_a_document_within_a_document_point_into_it() {
    Card inner = Card.of("cream", "10 g salt", "1 each water", "1 cup fig");
    assertThat(new Bench().faults(Card.of("cake", "1 each water").line("10 g", inner)))
        .extracting(Fault::pointer)
        .containsExactly(
            "/formula/lines/0/quantity",
            "/formula/lines/1/formula/lines/1/quantity",
            "/formula/lines/1/formula/lines/2/quantity");
  }

  @Test
  void faults_of_a_stored_formula_point_at_its_reference_and_name_the_place() {
    Bench bench =
        Bench.with(
            Card.of("cake", "10 g salt", "10 g >cream"),
            Card.of("cream", "10 g salt", "1 each water", "10 g unobtainium"));
    List<Fault> faults = bench.faults(Card.of("box", "1 g salt", "10 g >cake"));
    assertThat(faults).extracting(Fault::pointer).containsOnly("/formula/lines/1/formula");
    assertThat(faults)
        .extracting(Fault::code)
        .containsExactly(FaultCode.NO_PIECE_MASS, FaultCode.UNKNOWN_INGREDIENT);
    assertThat(faults.get(0).message()).contains("`cream`", "/lines/1/quantity", "`cake`");
    assertThat(faults.get(1).message()).contains("`cream`", "/lines/2/ingredient", "unobtainium");
    assertThat(bench.faults("cake")).extracting(Fault::pointer).containsOnly("/formula");
  }

  @Test
  void an_unknown_formula_deep_in_the_parts_is_named() {
    Bench bench =
        Bench.with(Card.of("a", "1 g >b"), Card.of("b", "1 g >c"), Card.of("c", "1 g >gone"));
    Fault fault = bench.fault("a");
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(fault.pointer()).isEqualTo("/formula");
    assertThat(fault.given()).isEqualTo("gone");
    assertThat(fault.message()).contains("`gone`", "`c`", "`b`", "`a`");
  }

  // circles ---------------------------------------------------------------------------------

  @Test
  void a_circle_is_refused_and_its_way_is_named() {
    Bench bench =
        Bench.with(
            Card.of("a", "1 g salt", "1 g >b"),
            Card.of("b", "1 g >c", "1 g salt"),
            Card.of("c", "1 g >b"));
    Fault fault = bench.fault("a");
    assertThat(fault.code()).isEqualTo(FaultCode.CYCLE);
    assertThat(fault.pointer()).isEqualTo("/formula");
    assertThat(fault.message()).contains("b → c → b").doesNotContain("a →");
  }

  @Test
  void a_formula_that_contains_itself_is_refused() {
    assertThat(Bench.with(Card.of("a", "1 g >a")).fault("a").message()).contains("a → a");
  }

  @Test
  void a_document_that_would_close_a_circle_once_it_is_kept_is_refused() {
    Bench bench = Bench.with(Card.of("a", "1 g salt"), Card.of("b", "1 g >a"));
    Fault fault = bench.fault(Card.of("a", "1 g salt", "1 g >b"));
    assertThat(fault.code()).isEqualTo(FaultCode.CYCLE);
    assertThat(fault.pointer()).isEqualTo("/formula/lines/1/formula");
    assertThat(fault.message()).contains("a → b → a");
  }

  @Test
  void checking_a_document_points_into_the_document_itself() {
    Bench bench = Bench.with(Card.of("b", "1 g >a"));
    bench.keep(Card.of("a", "1 g salt", "1 g >b"));
    var kitchen = bench.kitchen();
    Formula document = kitchen.formula(FormulaRef.parse("a"));
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> kitchen.check(document));
    assertThat(refusal.faults())
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(Tuple.tuple(FaultCode.CYCLE, "/lines/1/formula"));
  }

  @Test
  void an_older_revision_of_itself_is_no_circle() {
    Bench bench = Bench.with(Card.of("levain", "10 g rye-flour"));
    Batch batch = bench.batch(Card.of("levain", "100 g rye-flour", "10 g >levain@1"));
    assertThat(Bench.grams(batch, "rye-flour")).isEqualTo(110);
  }

  @Test
  void documents_without_an_id_are_never_taken_for_one_another() {
    Card inner = Card.of("x", "1 g salt");
    Card middle = Card.of("x", "1 g salt").line("1 g", inner);
    Card outer = Card.of("x", "1 g salt").line("1 g", middle);
    for (Card card : List.of(inner, middle, outer)) {
      card.tree().remove("id");
    }
    assertThat(new Bench().batch(outer).lines()).hasSize(3);
  }

  // mass and flour --------------------------------------------------------------------------

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "0 g salt; 0 cup water | no-size | weighs nothing",
        "as needed salt | no-size | weighs nothing",
        "100 g water : remains=0 | no-size | weighs nothing",
        "65 % water; 100 g salt | no-flour | no flour line has a weight",
        "65 % water; 2 % salt | no-flour | here they are 0 %",
        "90 % bread-flour; 65 % water | no-flour | here they are 90 %",
        "80 % bread-flour; 30 % rye-flour; 65 % water | no-flour | here they are 110 %",
        "100 % bread-flour; 100 g rye-flour | no-flour | 100 %",
        "120 % bread-flour; 100 g rye-flour | no-flour | 120 %",
      })
  void a_formula_without_mass_or_without_flour_is_refused(String lines, String code, String words) {
    Fault fault = new Bench().fault(Card.of("cake", lines.split("; ")), "mass", "1 kg");
    assertThat(fault.code()).hasToString(code);
    assertThat(fault.pointer()).isEqualTo("/formula/lines");
    assertThat(fault.message()).contains(words);
  }

  @Test
  void flours_of_a_formula_wholly_in_percent_may_be_off_by_rounding() {
    Card thirds = Card.of("bread", "33.3333333 % bread-flour", "66.6666667 % rye-flour");
    assertThat(new Bench().batch(thirds, "mass", "1 kg").root().mass().typical()).isEqualTo(1000);
    Card off = Card.of("bread", "33.333 % bread-flour", "66.666 % rye-flour");
    assertThat(new Bench().fault(off, "mass", "1 kg").message()).contains("99.999 %");
  }

  @Test
  void a_measured_mass_of_a_formula_wholly_in_percent_is_refused() {
    Card bread = Card.of("bread", "100 % bread-flour").yield("mass", "1 kg");
    Fault fault = new Bench().fault(bread, "mass", "1 kg");
    assertThat(fault.code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(fault.pointer()).isEqualTo("/formula/yield/mass");
  }

  @Test
  void a_measured_mass_and_a_loss_are_refused_together() {
    Card cake = Card.of("cake", "1 kg egg").yield("mass", "900 g", "bakeLoss", "10 %");
    assertThat(new Bench().fault(cake).pointer()).isEqualTo("/formula/yield/mass");
    for (Object loss : List.of("100 %", 1.0, 10.0, "101 %")) {
      Fault fault = new Bench().fault(Card.of("cake", "1 kg egg").yield("makeUpLoss", loss));
      assertThat(fault.code()).as("%s", loss).isEqualTo(FaultCode.OUT_OF_BOUNDS);
      assertThat(fault.pointer()).isEqualTo("/formula/yield/makeUpLoss");
    }
  }

  @Test
  void losses_so_great_that_nothing_is_left_are_refused() {
    Card dust = Card.of("dust", "1 g salt").yield("bakeLoss", 0.9999999999);
    assertThat(new Bench().fault(dust).code()).isEqualTo(FaultCode.NO_SIZE);
  }
}
