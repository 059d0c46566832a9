package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Volume;

class PanTest {
  @ParameterizedTest(name = "a {0} with {1} only lacks {2}")
  @CsvSource({
    "ROUND, diameter, /height",
    "SQUARE, side, /height",
    "RECTANGLE, length height, /width",
    "LOAF, length width bottomLength, /height",
    "FRUSTUM, top height, /bottom",
    "RING, diameter height, /core",
    "DOME, height, /diameter",
    "TRAY, width height, /length",
    "OBLONG, length height, /width",
  })
  void a_shape_without_one_of_its_dimensions_is_refused(
      Pan.Shape shape, String given, String missing) {
    Fault fault = only(refused(shape, null, given.split(" ")));
    assertThat(fault.code()).isEqualTo(FaultCode.MISSING);
    assertThat(fault.pointer()).isEqualTo(missing);
  }

  @Test
  void all_faults_of_a_pan_are_told_at_once() {
    Refusal refusal = refused(Pan.Shape.ROUND, null, "core", "side", "length");
    assertThat(refusal.faults())
        .extracting(Fault::pointer)
        .containsExactly("/core", "/side", "/length", "/diameter", "/height");
    assertThat(refusal.faults().get(0).message())
        .isEqualTo("a round pan has no `core`; it takes diameter, height");
    assertThat(refusal.faults().get(3).message())
        .isEqualTo("`diameter` is missing: a round pan needs diameter, height");
  }

  @ParameterizedTest(name = "a core of {0} in a ring of 20 cm")
  @CsvSource({"20", "25"})
  void a_core_as_wide_as_its_ring_is_refused(double core) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> PanExamples.ring(20, core, 6));
    Fault fault = only(refusal);
    assertThat(fault.code()).isEqualTo(FaultCode.INCONSISTENT);
    assertThat(fault.pointer()).isEqualTo("/core");
  }

  @Test
  void an_oval_wider_than_long_is_refused() {
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class,
            () ->
                new Pan(
                    Pan.Shape.OBLONG,
                    null,
                    null,
                    null,
                    Length.ofCentimetres(10),
                    Length.ofCentimetres(12),
                    null,
                    null,
                    null,
                    null,
                    Length.ofCentimetres(5),
                    null));
    assertThat(refusal.faults()).extracting(Fault::pointer).contains("/width");
  }

  @Test
  void dimensions_without_a_shape_are_refused_even_beside_a_capacity() {
    for (Volume capacity : Arrays.asList(null, Volume.ofLitres(1))) {
      Fault fault = only(refused(null, capacity, "diameter", "height"));
      assertThat(fault.pointer()).isEqualTo("/shape");
    }
  }

  @Test
  void nothing_at_all_is_refused() {
    assertThat(only(refused(null, null)).pointer()).isEqualTo("/shape");
  }

  @Test
  void a_capacity_alone_is_enough_and_stands_in_for_missing_dimensions() {
    assertThat(Pan.ofCapacity(Volume.ofLitres(1)).isMeasured()).isFalse();
    Pan loaf = pan(Pan.Shape.LOAF, Volume.ofLitres(1), "length");
    assertThat(loaf.isMeasured()).isFalse();
    assertThat(only(refused(Pan.Shape.LOAF, Volume.ofLitres(1), "core")).pointer())
        .isEqualTo("/core");
  }

  @Test
  void a_frustum_may_widen_to_the_bottom() {
    assertThat(PanExamples.frustum(8, 12, 5).isMeasured()).isTrue();
  }

  @Test
  void a_reference_names_or_describes_a_pan_and_never_both() {
    Pan pan = Pan.ofCapacity(Volume.ofLitres(1));
    assertThat(catchThrowableOfType(Refusal.class, () -> new PanRef("round-8x2-in", pan)))
        .isNotNull();
    assertThat(catchThrowableOfType(Refusal.class, () -> new PanRef(null, null))).isNotNull();
    assertThat(PanRef.parse(" round-8x2-in ").text()).isEqualTo("round-8x2-in");
    assertThat(PanRef.of(pan).text()).isNull();
  }

  private static Fault only(Refusal refusal) {
    assertThat(refusal.faults()).hasSize(1);
    return refusal.faults().get(0);
  }

  private static Refusal refused(Pan.Shape shape, Volume capacity, String... given) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> pan(shape, capacity, given));
    assertThat(refusal).isNotNull();
    return refusal;
  }

  /** Each given dimension 10 cm, found by the name of its component. */
  private static Pan pan(Pan.Shape shape, Volume capacity, String... given) {
    List<String> names = List.of(given);
    RecordComponent[] components = Pan.class.getRecordComponents();
    Length[] lengths =
        Arrays.stream(components)
            .map(c -> names.contains(c.getName()) ? Length.ofCentimetres(10) : null)
            .toArray(Length[]::new);
    return new Pan(
        shape,
        lengths[1],
        lengths[2],
        lengths[3],
        lengths[4],
        lengths[5],
        lengths[6],
        lengths[7],
        lengths[8],
        lengths[9],
        lengths[10],
        capacity);
  }
}
