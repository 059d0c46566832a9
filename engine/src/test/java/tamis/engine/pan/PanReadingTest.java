package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.PanCount;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** Pans and coats as callers write them. */
class PanReadingTest {
  private static final References PANS_ONLY =
      reference -> Pans.standard().check((PanRef) reference);
  private static final RecordReader READER = new RecordReader(PANS_ONLY, Limits.usual());

  @Test
  void a_pan_is_read_by_shape_and_dimensions() {
    Map<String, Object> pan =
        object("shape", "frustum", "top", "4.8 cm", "bottom", "4.1 cm", "height", "4.5 cm");
    PanCount count = READER.read(PanCount.class, object("pan", pan));
    assertThat(Pans.standard().millilitres(count.pan()).typical())
        .isEqualTo(70.13213, within(1e-5));
  }

  @Test
  void a_pan_is_read_by_its_id() {
    PanCount count = READER.read(PanCount.class, object("pan", "round-8x2-in", "count", 2L));
    assertThat(Pans.standard().millilitres(count.pan()).typical()).isEqualTo(1419.528);
  }

  @Test
  void a_pan_is_read_by_the_water_it_holds() {
    PanCount count = READER.read(PanCount.class, object("pan", object("capacity", "1.5 l")));
    assertThat(Pans.standard().millilitres(count.pan()).typical()).isEqualTo(1500);
  }

  @Test
  void an_unknown_id_and_misfitting_dimensions_are_told_with_their_place() {
    assertThat(pointers(PanCount.class, object("pan", "round-8x22-in"))).containsExactly("/pan");
    Map<String, Object> round = object("shape", "round", "diameter", "20 cm", "core", "5 cm");
    assertThat(pointers(PanCount.class, object("pan", round)))
        .containsExactly("/pan/core", "/pan/height");
  }

  @Test
  void the_published_coat_is_read_and_worked_out() {
    Map<String, Object> cake =
        object("shape", "round", "diameter", "18 in", "layers", 2L, "layerHeight", "3.5 in");
    Coat coat =
        READER.read(
            Coat.class,
            object("cake", cake, "top", "0.375 in", "side", "0.375 in", "between", "0.25 in"));
    assertThat(coat.volumes().total()).isEqualTo(324.1055968 * 16.387064, within(0.001));
  }

  @Test
  void misfits_of_a_coat_are_told_with_their_place() {
    Map<String, Object> cake =
        object("shape", "square", "diameter", "18 cm", "layerHeight", "3 cm");
    assertThat(pointers(Coat.class, object("cake", cake, "top", "-1 mm", "side", "5 mm")))
        .containsExactlyInAnyOrder("/cake/diameter", "/cake/side", "/top");
    Map<String, Object> flat =
        object("shape", "round", "diameter", "18 cm", "layers", 0L, "layerHeight", "0 cm");
    assertThat(pointers(Coat.class, object("cake", flat, "top", "5 mm")))
        .containsExactlyInAnyOrder("/cake/layers", "/cake/layerHeight", "/side");
  }

  private static List<String> pointers(Class<? extends Record> type, Map<String, Object> tree) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> READER.read(type, tree));
    assertThat(refusal).isNotNull();
    return refusal.faults().stream().map(Fault::pointer).toList();
  }

  private static Map<String, Object> object(Object... pairs) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      object.put((String) pairs[i], pairs[i + 1]);
    }
    return object;
  }
}
