package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.note.Remark;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class PanVolumeTest extends CalculationContract<PanVolume.Input, PanVolume.Result> {
  private static final Map<String, Object> LITRE = Map.of("capacity", "1 l");

  @Override
  protected PanVolume calculation() {
    return new PanVolume();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @ParameterizedTest(name = "a {0} with {1} holds {2} ml ({4})")
  @CsvFileSource(resources = "/pan-volume.csv", numLinesToSkip = 1)
  void dimensions_answer_exact_geometry(
      String shape, String fields, double millilitres, double tolerance, String source) {
    PanVolume.Result result = result(Map.of("pan", Given.pan(shape, fields)));
    assertThat(result.millilitres()).isEqualTo(millilitres, within(tolerance));
    assertThat(result.low()).isEqualTo(result.high());
  }

  @Test
  void an_id_answers_its_published_capacity_and_shows_geometry() {
    PanVolume.Result result = result(Map.of("pan", "round-8x2-in"));
    assertThat(result.millilitres()).isEqualTo(1419.528, within(1e-9));
    assertThat(result.low()).isEqualTo(1419.528, within(1e-9));
    assertThat(result.high()).isEqualTo(1647.4, within(0.05));
    assertThat(result.areaSquareCm()).isEqualTo(324.293, within(1e-3));
    assertThat(result.fillMillilitres()).isEqualTo(1419.528 * 0.6667, within(1e-9));
    assertThat(result.heightCm()).isEqualTo(5.08, within(1e-9));
  }

  @Test
  void water_that_the_baker_measured_beats_the_table_and_widens_the_spread() {
    PanVolume.Result result = result(Map.of("pan", "round-8x2-in", "capacity", "1.7 l"));
    assertThat(result.millilitres()).isEqualTo(1700, within(1e-9));
    assertThat(result.low()).isEqualTo(1419.528, within(1e-9));
    assertThat(result.high()).isEqualTo(1700, within(1e-9));
    assertThat(result(Map.of("pan", LITRE)).millilitres()).isEqualTo(1000, within(1e-9));
  }

  @Test
  void a_tray_of_hollows_and_several_pans_hold_what_all_hold() {
    double cup = result(Map.of("pan", "muffin-cup-7x3-cm")).millilitres();
    PanVolume.Result trays = result(Map.of("pan", "muffin-tray-of-12-7x3-cm", "count", 3));
    assertThat(trays.millilitres()).isEqualTo(36 * cup, within(1e-9));
    assertThat(trays.cavities()).isEqualTo(12);
    Map<String, Object> own = Given.pan("frustum", "top=7 cm;bottom=5 cm;height=3 cm");
    own.put("cavities", 6);
    assertThat(result(Map.of("pan", own)).millilitres()).isEqualTo(6 * cup, within(1e-9));
  }

  @Test
  void the_kind_of_batter_says_how_full() {
    PanVolume.Result result = result(Map.of("pan", "round-20x5-cm", "batter", "foam-cake"));
    assertThat(result.fillPart()).isEqualTo(0.7, within(1e-12));
    assertThat(result.fillLowMillilitres()).isEqualTo(result.millilitres() * 0.6667, within(1e-9));
    assertThat(result.fillHighMillilitres()).isEqualTo(result.millilitres() * 0.75, within(1e-9));
    assertThat(result.fillDepthCm()).isEqualTo(3.5, within(1e-9));
  }

  @Test
  void batter_that_rises_ends_at_the_rim() {
    PanVolume.Result byRise = result(Map.of("pan", "round-20x5-cm", "rise", 2));
    assertThat(byRise.fillPart()).isEqualTo(0.5, within(1e-12));
    Map<String, Object> densities =
        Map.of("pan", "round-20x5-cm", "batterDensity", "0.9 g/ml", "bakedDensity", "0.45 g/ml");
    PanVolume.Result byDensity = result(densities);
    assertThat(byDensity.fillPart()).isEqualTo(0.5, within(1e-12));
    assertThat(byDensity.fillGrams()).isEqualTo(byDensity.millilitres() * 0.45, within(1e-9));
    assertThat(answer(read(densities)).remarks())
        .extracting(Remark::code)
        .containsExactly("rise-from-density");
  }

  @Test
  void a_loaf_tin_is_filled_by_the_mass_of_dough() {
    PanVolume.Result result =
        result(Map.of("pan", Map.of("capacity", "1800 ml"), "dough", "open-tin"));
    assertThat(result.fillLowGrams()).isEqualTo(720, within(1e-9));
    assertThat(result.fillHighGrams()).isEqualTo(1000, within(1e-9));
    assertThat(result.fillMillilitres()).isNull();
  }

  @ParameterizedTest(name = "{0} g of butter cake in a litre: {1}")
  @CsvSource({"1200, overflow", "760, overflow", "600,", "300, too-shallow"})
  void batter_that_overflows_or_stands_low_is_remarked(int grams, String code) {
    Map<String, Object> input =
        Map.of(
            "pan", LITRE, "batter", "butter-cake", "batterDensity", "1 g/ml", "mass", grams + " g");
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .isEqualTo(code == null ? List.of() : List.of(code));
    assertThat(result(input).massPart()).isEqualTo(grams / 1000.0, within(1e-9));
  }

  @ParameterizedTest(name = "{0} g of dough in a tin of 1.8 l: {1}")
  @CsvSource({"1100, overflow", "850,", "600, too-shallow"})
  void dough_that_overflows_or_stands_low_is_remarked(int grams, String code) {
    Map<String, Object> input =
        Map.of("pan", Map.of("capacity", "1800 ml"), "dough", "open-tin", "mass", grams + " g");
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .isEqualTo(code == null ? List.of() : List.of(code));
  }

  @ParameterizedTest(name = "a {0} with {1}: {2}")
  @CsvSource({
    "round, diameter=0 cm;height=5 cm, out-of-bounds /pan/diameter",
    "round, diameter=-8 in;height=2 in, out-of-bounds /pan/diameter",
    "ring, diameter=20 cm;core=22 cm;height=6 cm, inconsistent /pan/core",
    "ring, diameter=20 cm;core=8 cm;bottom=6 cm;height=6 cm, inconsistent /pan/core",
    "round, diameter=20 cm;height=5 g, wrong-dimension /pan/height",
    "round, diameter=20;height=5 cm, no-unit /pan/diameter",
    "oblong, length=10 cm;width=12 cm;height=5 cm, inconsistent /pan/width",
  })
  void a_pan_that_cannot_be_is_refused(String shape, String fields, String told) {
    assertThat(Given.told(() -> read(Map.of("pan", Given.pan(shape, fields))))).contains(told);
  }

  @Test
  void an_unknown_pan_is_refused_with_those_that_may_be_meant() {
    Fault fault = Given.faults(() -> read(Map.of("pan", "round-8x3-in"))).get(0);
    assertThat(fault.code()).hasToString("unknown-pan");
    assertThat(fault.pointer()).isEqualTo("/pan");
    assertThat(fault.message()).contains("round-8x2-in");
  }

  @Test
  void an_unknown_batter_is_refused_with_those_that_are_known() {
    Fault fault =
        Given.faults(() -> read(Map.of("pan", "round-8x2-in", "batter", "foamcake"))).get(0);
    assertThat(fault.pointer()).isEqualTo("/batter");
    assertThat(fault.message()).contains("did you mean foam-cake?");
  }

  @Test
  void two_ways_to_say_how_full_and_a_mass_without_density_are_refused_together() {
    Map<String, Object> input =
        Map.of("pan", "round-8x2-in", "fill", 0.5, "rise", 2, "mass", "500 g");
    assertThat(Given.told(() -> read(input)))
        .containsExactly("exactly-one", "missing /batterDensity");
  }
}
