package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Volume;

class PansTest {
  private static final Pans PANS = Pans.standard();

  @ParameterizedTest(name = "{0}: {1} published, {2} by geometry ({4})")
  @CsvFileSource(resources = "/tamis/engine/pan/standard-pans.csv", numLinesToSkip = 1)
  void a_table_id_answers_the_published_capacity_and_shows_geometry(
      String id, Double published, Double geometric, double tolerance, String source) {
    PanRef pan = PanRef.parse(id);
    Spread held = PANS.millilitres(pan);
    double typical = published == null ? geometric : published;
    double other = geometric == null ? published : geometric;
    assertThat(held.typical()).isEqualTo(typical, within(tolerance));
    assertThat(held.low()).isEqualTo(Math.min(typical, other), within(tolerance));
    assertThat(held.high()).isEqualTo(Math.max(typical, other), within(tolerance));
    same(PANS.publishedMillilitres(pan), published, tolerance);
    same(PANS.geometricMillilitres(pan), geometric, tolerance);
  }

  @Test
  void dimensions_answer_exact_geometry_where_the_id_answers_the_published_capacity() {
    PanRef described =
        PanRef.of(Pan.round(Length.ofCentimetres(8 * 2.54), Length.ofCentimetres(2 * 2.54)));
    Spread held = PANS.millilitres(described);
    assertThat(held.isExact()).isTrue();
    assertThat(held.typical())
        .isEqualTo(PANS.geometricMillilitres(PanRef.parse("round-8x2-in")), within(1e-9));
    assertThat(PANS.publishedMillilitres(described)).isNull();
    assertThat(PANS.heightCm(described)).isEqualTo(5.08, within(1e-9));
    assertThat(PANS.areaSquareCm(described)).isEqualTo(324.2928, within(1e-4));
  }

  @Test
  void the_owners_capacity_beats_geometry() {
    Length ten = Length.ofCentimetres(10);
    Pan filled =
        new Pan(
            Pan.Shape.ROUND,
            ten,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            null,
            ten,
            Volume.ofMillilitres(700));
    PanRef pan = PanRef.of(filled);
    assertThat(PANS.millilitres(pan)).isEqualTo(Spread.exactly(700));
    assertThat(PANS.geometricMillilitres(pan)).isEqualTo(250 * Math.PI, within(1e-9));
  }

  @Test
  void a_pan_known_by_its_capacity_has_no_area_and_no_height() {
    PanRef pan = PanRef.of(Pan.ofCapacity(Volume.ofLitres(2)));
    assertThat(PANS.millilitres(pan)).isEqualTo(Spread.exactly(2000));
    assertThat(PANS.geometricMillilitres(pan)).isNull();
    assertThat(PANS.areaSquareCm(pan)).isNull();
    assertThat(PANS.heightCm(pan)).isNull();
  }

  @Test
  void a_pie_dish_has_a_rim_though_its_taper_is_not_known() {
    PanRef pie = PanRef.parse("pie-9x1_25-in");
    assertThat(PANS.geometricMillilitres(pie)).isNull();
    assertThat(PANS.areaSquareCm(pie)).isEqualTo(410.4331, within(1e-4));
    assertThat(PANS.heightCm(pie)).isEqualTo(3.175);
    assertThat(PANS.areaSquareCm(PanRef.parse("tube-10x4-in"))).isNull();
    assertThat(PANS.areaSquareCm(PanRef.parse("gastronorm-1-1x65-mm"))).isNull();
    assertThat(PANS.heightCm(PanRef.parse("gastronorm-1-1x65-mm"))).isEqualTo(6.5);
  }

  @Test
  void an_unknown_pan_is_refused_with_those_that_may_be_meant() {
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> PANS.check(PanRef.parse("round-8x22-in")));
    Fault fault = refusal.faults().get(0);
    assertThat(fault.code()).isEqualTo(FaultCode.UNKNOWN_PAN);
    assertThat(fault.given()).isEqualTo("round-8x22-in");
    assertThat(fault.message()).contains("did you mean", "round-8x2-in");
    assertThat(catchThrowableOfType(Refusal.class, () -> PANS.millilitres(PanRef.parse("wok"))))
        .hasMessage("no pan `wok` is in the table; give its shape and dimensions");
  }

  @Test
  void a_described_pan_and_one_of_the_table_pass_the_check() {
    PANS.check(PanRef.of(Pan.ofCapacity(Volume.ofLitres(1))));
    PANS.check(PanRef.parse("loaf-8_5x4_5x2_5-in"));
  }

  @Test
  void both_orders_of_length_and_width_name_the_same_tin() {
    for (List<String> ids :
        List.of(
            List.of("rectangle-13x9x2-in", "rectangle-9x13x2-in"),
            List.of("square-8x8x2-in", "square-8x2-in"),
            List.of("tray-18x26x1-in", "tray-26x18x1-in"))) {
      assertThat(PANS.millilitres(PanRef.parse(ids.get(1))))
          .isEqualTo(PANS.millilitres(PanRef.parse(ids.get(0))));
    }
  }

  @Test
  void the_row_that_a_capacity_rests_on_is_cited() {
    Notes notes = new Notes();
    PANS.millilitres(PanRef.parse("square-8x2-in"), notes, "/pan", "/millilitres");
    assertThat(notes.sources())
        .containsExactly(
            new Cited(
                "pans",
                "square-8x8x2-in",
                "pan-capacities",
                "square 8 × 8 × 2 in: 8 cups",
                "handbook",
                List.of("/millilitres")));
    assertThat(notes.remarks()).isEmpty();
  }

  @Test
  void a_capacity_far_from_its_walls_is_told() {
    Remark remark = only(PanRef.parse("rectangle-11x7x2-in"));
    assertThat(remark.code()).isEqualTo("capacity-doubtful");
    assertThat(remark.pointer()).isEqualTo("/pan");
    assertThat(remark.message()).contains("1420 ml", "2524 ml");
  }

  @Test
  void litres_of_one_maker_are_told_to_be_so() {
    Remark remark = only(PanRef.parse("gastronorm-530x325x65-mm"));
    assertThat(remark.code()).isEqualTo("capacity-differs-by-maker");
    assertThat(remark.kind()).isEqualTo(Remark.Kind.ESTIMATE);
  }

  @Test
  void a_ring_is_told_to_be_taken_as_straight_walled() {
    assertThat(only(PanRef.of(PanExamples.ring(22, 10, 3))).message()).contains("905 ml", "711 ml");
    assertThat(only(PanRef.parse("ring-20x6-cm")).code()).isEqualTo("ring-straight");
  }

  private static Remark only(PanRef pan) {
    Notes notes = new Notes();
    PANS.millilitres(pan, notes, "/pan", "/millilitres");
    assertThat(notes.remarks()).hasSize(1);
    return notes.remarks().get(0);
  }

  private static void same(Double actual, Double expected, double tolerance) {
    if (expected == null) {
      assertThat(actual).isNull();
    } else {
      assertThat(actual).isEqualTo(expected, within(tolerance));
    }
  }

  @Test
  void a_tray_holds_what_all_its_hollows_hold() {
    PanRef cup = PanRef.parse("muffin-cup-7x3-cm");
    PanRef tray = PanRef.parse("muffin-tray-of-12-7x3-cm");
    assertThat(PANS.cavities(tray)).isEqualTo(12);
    assertThat(PANS.millilitres(tray).typical())
        .isEqualTo(12 * PANS.millilitres(cup).typical(), within(1e-9));
    assertThat(PANS.areaSquareCm(tray)).isEqualTo(12 * PANS.areaSquareCm(cup), within(1e-9));
    assertThat(PANS.depthCm(tray, 0.5)).isEqualTo(PANS.depthCm(cup, 0.5), within(1e-9));
    assertThat(PANS.publishedMillilitres(PanRef.parse("muffin-tray-of-12-2_75x1_5-in")))
        .isEqualTo(12 * 118.294, within(1e-9));
  }

  @Test
  void a_pan_of_which_only_the_height_is_known_is_taken_as_straight() {
    assertThat(PANS.depthCm(PanRef.parse("gastronorm-1-1x65-mm"), 0.5))
        .isEqualTo(3.25, within(1e-9));
    assertThat(PANS.depthCm(PanRef.of(Pan.ofCapacity(Volume.ofLitres(1))), 0.5)).isNull();
  }
}
