package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The seed stands in the name of each drawn case; {@code -Dtamis.seed=N} draws it again. */
class PanGeometryTest {
  private static final Percentage ROUNDING = Percentage.withPercentage(1e-9);

  static LongStream seeds() {
    Long chosen = Long.getLong("tamis.seed");
    return chosen == null ? LongStream.range(0, 100) : LongStream.of(chosen);
  }

  @ParameterizedTest(name = "{0} holds {11} ml ({13})")
  @CsvFileSource(resources = "/tamis/engine/pan/pan-volumes.csv", numLinesToSkip = 1)
  void volumes_match_the_worked_examples(ArgumentsAccessor row) {
    assertThat(PanGeometry.millilitres(PanExamples.pan(row)))
        .isEqualTo(row.getDouble(11), within(row.getDouble(12)));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void volume_grows_with_the_cube_and_area_with_the_square_of_the_dimensions(long seed) {
    double scale = new SplittableRandom(seed).nextDouble(0.1, 5);
    for (Pan.Shape shape : Pan.Shape.values()) {
      Pan small = PanExamples.drawn(shape, new SplittableRandom(seed), 1);
      Pan large = PanExamples.drawn(shape, new SplittableRandom(seed), scale);
      assertThat(PanGeometry.millilitres(large))
          .as("%s", shape)
          .isCloseTo(PanGeometry.millilitres(small) * Math.pow(scale, 3), ROUNDING);
      assertThat(PanGeometry.rimSquareCm(large))
          .as("%s", shape)
          .isCloseTo(PanGeometry.rimSquareCm(small) * scale * scale, ROUNDING);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_frustum_that_does_not_taper_is_a_round(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double diameter = random.nextDouble(1, 60);
    double height = random.nextDouble(1, 20);
    Pan round = Pan.round(PanExamples.cm(diameter), PanExamples.cm(height));
    assertThat(PanGeometry.millilitres(PanExamples.frustum(diameter, diameter, height)))
        .isCloseTo(PanGeometry.millilitres(round), ROUNDING);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_loaf_tin_that_does_not_taper_is_a_box_and_a_tapering_one_holds_less(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double length = random.nextDouble(1, 60);
    double width = random.nextDouble(1, 60);
    double height = random.nextDouble(1, 20);
    double taper = random.nextDouble(0.5, 0.99);
    double box = length * width * height;
    assertThat(PanGeometry.millilitres(PanExamples.loaf(length, width, length, width, height)))
        .isCloseTo(box, ROUNDING);
    assertThat(
            PanGeometry.millilitres(
                PanExamples.loaf(length, width, length * taper, width * taper, height)))
        .isBetween(box * taper * taper, box);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_ring_and_its_core_fill_the_round(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double diameter = random.nextDouble(10, 60);
    double core = random.nextDouble(1, 9);
    double height = random.nextDouble(1, 20);
    double whole =
        PanGeometry.millilitres(Pan.round(PanExamples.cm(diameter), PanExamples.cm(height)));
    double hole = PanGeometry.millilitres(Pan.round(PanExamples.cm(core), PanExamples.cm(height)));
    assertThat(PanGeometry.millilitres(PanExamples.ring(diameter, core, height)) + hole)
        .isCloseTo(whole, ROUNDING);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_tapering_ring_is_one_cone_less_another(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double top = random.nextDouble(15, 60);
    double bottom = random.nextDouble(15, 60);
    double core = random.nextDouble(1, 9);
    double coreBottom = random.nextDouble(1, 14);
    double height = random.nextDouble(1, 20);
    Pan ring =
        new Pan(
            Pan.Shape.RING,
            PanExamples.cm(top),
            PanExamples.cm(core),
            null,
            null,
            null,
            null,
            null,
            null,
            PanExamples.cm(bottom),
            PanExamples.cm(height),
            null,
            PanExamples.cm(coreBottom),
            null);
    assertThat(PanGeometry.millilitres(ring))
        .isCloseTo(
            PanGeometry.millilitres(PanExamples.frustum(top, bottom, height))
                - PanGeometry.millilitres(PanExamples.frustum(core, coreBottom, height)),
            ROUNDING);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_full_pan_is_filled_to_its_height_and_less_stands_lower(long seed) {
    for (Pan.Shape shape : Pan.Shape.values()) {
      Pan pan = PanExamples.drawn(shape, new SplittableRandom(seed), 1);
      double full = PanGeometry.millilitres(pan);
      double height = pan.height().centimetres();
      assertThat(PanGeometry.depthCm(pan, full)).as("%s", shape).isCloseTo(height, within(1e-6));
      double half = PanGeometry.depthCm(pan, full / 2);
      assertThat(half).as("%s", shape).isBetween(0.0, height);
      assertThat(PanGeometry.depthCm(pan, full / 4)).as("%s", shape).isLessThan(half);
    }
  }

  @Test
  void half_of_a_straight_tin_stands_half_as_high() {
    Pan round = Pan.round(PanExamples.cm(20.0), PanExamples.cm(6.0));
    assertThat(PanGeometry.depthCm(round, 300 * Math.PI)).isEqualTo(3, within(1e-9));
  }

  @Test
  void a_half_torus_is_the_half_round_ring_half_as_high_as_wide() {
    // Middle radius 8, section radius 3: π² R r² = 710.6115168784338.
    assertThat(PanGeometry.millilitres(PanExamples.ring(22, 10, 3)) * PanGeometry.halfRoundPart())
        .isEqualTo(710.6115168784338, within(1e-9));
  }

  @Test
  void areas_match_published_factors() {
    // 9 to 10 in round 1.2346, 20 to 23 cm round 1.3225, 8 in square over 9 in round 1.00602.
    assertThat(rim("round-10x2-in") / rim("round-9x2-in")).isEqualTo(1.234568, within(1e-6));
    assertThat(rim("round-23x5-cm") / rim("round-20x5-cm")).isEqualTo(1.3225, within(1e-9));
    assertThat(rim("square-8x8x2-in") / rim("round-9x2-in")).isEqualTo(1.00602, within(1e-5));
  }

  private static double rim(String id) {
    return Pans.standard().areaSquareCm(PanRef.parse(id));
  }
}
