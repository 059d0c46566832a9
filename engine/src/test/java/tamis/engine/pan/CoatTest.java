package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.ArgumentsAccessor;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;

/** The seed stands in the name of each drawn case; {@code -Dtamis.seed=N} draws it again. */
class CoatTest {
  private static final double INCH = 2.54;
  private static final double CUBIC_INCH = INCH * INCH * INCH;

  static LongStream seeds() {
    Long chosen = Long.getLong("tamis.seed");
    return chosen == null ? LongStream.range(0, 100) : LongStream.of(chosen);
  }

  @ParameterizedTest(name = "{0}: {14}")
  @CsvFileSource(resources = "/tamis/engine/pan/coats.csv", numLinesToSkip = 1)
  void coats_match_the_worked_examples(ArgumentsAccessor row) {
    CoatVolumes cream = coat(row).volumes();
    double tolerance = row.getDouble(13);
    assertThat(cream.top() / CUBIC_INCH).isEqualTo(row.getDouble(10), within(tolerance));
    assertThat(cream.side() / CUBIC_INCH).isEqualTo(row.getDouble(11), within(tolerance));
    assertThat(cream.between() / CUBIC_INCH).isEqualTo(row.getDouble(12), within(tolerance));
    assertThat(cream.total() / CUBIC_INCH)
        .isEqualTo(
            row.getDouble(10) + row.getDouble(11) + row.getDouble(12), within(3 * tolerance));
  }

  @Test
  void the_published_cake_takes_five_litres_of_cream() {
    CakeShape cake = CakeShape.round(inches(18.0), 2, inches(3.5));
    Coat coat = new Coat(cake, inches(0.375), inches(0.375), inches(0.25));
    assertThat(coat.volumes().total()).isEqualTo(5311, within(1.0));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_coat_is_the_outer_solid_less_the_layers(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double a = random.nextDouble(5, 60);
    double b = random.nextDouble(5, 60);
    int layers = random.nextInt(1, 6);
    double layer = random.nextDouble(0.5, 10);
    double top = random.nextDouble(0, layer);
    double side = random.nextDouble(0.01, 2.5);
    double between = random.nextDouble(0, layer);
    for (CakeShape.Shape shape : CakeShape.Shape.values()) {
      CakeShape cake = cake(shape, a, b, layers, layer);
      double high = layers * layer + (layers - 1) * between + top;
      double outer = solid(shape, a + 2 * side, b + 2 * side, high);
      double inner = solid(shape, a, b, layers * layer);
      Coat coat = new Coat(cake, cm(top), cm(side), cm(between));
      assertThat(coat.volumes().total())
          .as("%s", shape)
          .isCloseTo(outer - inner, Percentage.withPercentage(1e-6));
    }
  }

  @Test
  void without_a_thickness_between_the_layers_nothing_is_between() {
    CakeShape cake = CakeShape.round(cm(20), 3, cm(2));
    CoatVolumes bare = new Coat(cake, cm(1), cm(1), null).volumes();
    assertThat(bare.between()).isZero();
    assertThat(bare).isEqualTo(new Coat(cake, cm(1), cm(1), cm(0)).volumes());
  }

  @Test
  void a_cake_of_which_no_layers_are_told_has_one() {
    CakeShape told = CakeShape.round(cm(20), 1, cm(5));
    CakeShape untold = new CakeShape(CakeShape.Shape.ROUND, cm(20), null, null, null, null, cm(5));
    assertThat(new Coat(untold, cm(1), cm(1), cm(1)).volumes())
        .isEqualTo(new Coat(told, cm(1), cm(1), null).volumes());
  }

  @Test
  void a_coat_of_nothing_is_refused() {
    CakeShape cake = CakeShape.round(cm(20), 1, cm(5));
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> new Coat(cake, cm(0), cm(0), cm(1)));
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(new Coat(CakeShape.round(cm(20), 2, cm(5)), cm(0), cm(0), cm(1)).volumes().total())
        .isEqualTo(100 * Math.PI, within(1e-9));
  }

  @ParameterizedTest(name = "a {0} cake lacks {1} and has no {2}")
  @CsvSource({
    "ROUND, /diameter, /side",
    "SQUARE, /side, /diameter",
    "RECTANGLE, /length /width, /diameter /side",
  })
  void a_cake_with_the_dimensions_of_another_shape_is_refused(
      CakeShape.Shape shape, String missing, String foreign) {
    boolean round = shape == CakeShape.Shape.ROUND;
    boolean square = shape == CakeShape.Shape.SQUARE;
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                new CakeShape(
                    shape, round ? null : cm(20), square ? null : cm(20), null, null, 1, cm(5)));
    assertThat(refusal.faults())
        .filteredOn(fault -> fault.code() == FaultCode.MISSING)
        .extracting(Fault::pointer)
        .containsExactly(missing.split(" "));
    assertThat(refusal.faults())
        .filteredOn(fault -> fault.code() == FaultCode.NOT_ALLOWED)
        .extracting(Fault::pointer)
        .containsExactly(foreign.split(" "));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void crumb_coat_trimmed_layers_and_levelling_fill_the_same_outer_solid(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double a = random.nextDouble(10, 60);
    double b = random.nextDouble(10, 60);
    int layers = random.nextInt(3, 6);
    double layer = random.nextDouble(2, 8);
    double cut = random.nextDouble(0, 1);
    double trim = random.nextDouble(0, 3);
    double crumb = random.nextDouble(0, 0.5);
    double thick = random.nextDouble(0, 1);
    for (CakeShape.Shape shape : CakeShape.Shape.values()) {
      CakeShape whole = cake(shape, a, b, layers, layer);
      CakeShape cake =
          new CakeShape(
              shape,
              whole.diameter(),
              whole.side(),
              whole.length(),
              whole.width(),
              layers,
              whole.layerHeight(),
              cm(cut),
              cm(trim));
      double stack = layers * (layer - cut) + (layers - 1) * thick;
      double around = 2 * (crumb + thick);
      double outer = solid(shape, a + around, b + around, stack + crumb + thick);
      double cakes =
          2 * solid(shape, a, b, layer - cut)
              + (layers - 2) * solid(shape, a - 2 * trim, b - 2 * trim, layer - cut);
      Coat coat =
          new Coat(cake, cm(thick), cm(thick), cm(thick), List.of(), cm(crumb), new Fraction(0.1));
      assertThat(coat.volumes().total())
          .as("%s", shape)
          .isCloseTo((outer - cakes) * 1.1, Percentage.withPercentage(1e-6));
      assertThat(coat.volumes().piping())
          .isCloseTo((outer - cakes) * 0.1, Percentage.withPercentage(1e-6));
    }
  }

  @Test
  void tiers_take_what_each_takes_alone() {
    CakeShape low = CakeShape.round(cm(30), 3, cm(4));
    CakeShape high = CakeShape.round(cm(20), 2, cm(4));
    Coat tiered = new Coat(null, cm(0.5), cm(0.5), cm(0.5), List.of(low, high), null, null);
    double alone =
        new Coat(low, cm(0.5), cm(0.5), cm(0.5)).volumes().total()
            + new Coat(high, cm(0.5), cm(0.5), cm(0.5)).volumes().total();
    assertThat(tiered.volumes().total()).isCloseTo(alone, within(1e-9));
  }

  @ParameterizedTest(name = "top {0}, side {1}, between {2} cm on a cake 10 cm wide, 2 × 3 cm high")
  @CsvSource({"6.1, 1, 1, /top", "1, 5.1, 1, /side", "1, 1, 6.1, /between"})
  void a_coat_thicker_than_the_cake_is_refused(
      double top, double side, double between, String pointer) {
    CakeShape cake = CakeShape.round(cm(10), 2, cm(3));
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> new Coat(cake, cm(top), cm(side), cm(between)));
    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly(pointer);
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.INCONSISTENT);
  }

  @Test
  void a_tier_wider_than_the_one_below_is_refused() {
    CakeShape low = CakeShape.round(cm(20), 1, cm(4));
    CakeShape high = CakeShape.round(cm(30), 1, cm(4));
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () -> new Coat(null, cm(1), cm(1), null, List.of(low, high), null, null));
    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly("/tiers/1");
  }

  @ParameterizedTest(name = "levelled {0}, trimmed {1}")
  @CsvSource({"4, 0, /levelled", "0, 10, /innerTrim"})
  void a_layer_of_which_nothing_is_left_is_refused(double cut, double trim, String pointer) {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                new CakeShape(
                    CakeShape.Shape.ROUND, cm(20), null, null, null, 3, cm(4), cm(cut), cm(trim)));
    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly(pointer);
  }

  private static Coat coat(ArgumentsAccessor row) {
    CakeShape cake =
        new CakeShape(
            CakeShape.Shape.valueOf(row.getString(0).toUpperCase(Locale.ROOT)),
            inches(row.getDouble(1)),
            inches(row.getDouble(2)),
            inches(row.getDouble(3)),
            inches(row.getDouble(4)),
            row.getInteger(5),
            inches(row.getDouble(6)));
    return new Coat(
        cake, inches(row.getDouble(7)), inches(row.getDouble(8)), inches(row.getDouble(9)));
  }

  private static CakeShape cake(
      CakeShape.Shape shape, double a, double b, int layers, double layer) {
    return switch (shape) {
      case ROUND -> new CakeShape(shape, cm(a), null, null, null, layers, cm(layer));
      case SQUARE -> new CakeShape(shape, null, cm(a), null, null, layers, cm(layer));
      case RECTANGLE -> new CakeShape(shape, null, null, cm(a), cm(b), layers, cm(layer));
    };
  }

  private static double solid(CakeShape.Shape shape, double a, double b, double height) {
    return switch (shape) {
      case ROUND -> Math.PI * a * a / 4 * height;
      case SQUARE -> a * a * height;
      case RECTANGLE -> a * b * height;
    };
  }

  private static Length cm(double centimetres) {
    return Length.ofCentimetres(centimetres);
  }

  private static Length inches(Double inches) {
    return inches == null ? null : Length.ofCentimetres(inches * INCH);
  }
}
