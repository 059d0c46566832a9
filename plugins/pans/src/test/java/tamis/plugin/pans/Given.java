package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;

/** Inputs as callers write them. */
final class Given {
  private Given() {}

  /** Seeds of drawn cases; {@code -Dtamis.seed=N} draws one again. */
  static LongStream seeds() {
    Long chosen = Long.getLong("tamis.seed");
    return chosen == null ? LongStream.range(0, 100) : LongStream.of(chosen);
  }

  /** A pan of a shape with fields such as {@code "diameter=20 cm;height=5 cm"}. */
  static Map<String, Object> pan(String shape, String fields) {
    Map<String, Object> pan = new LinkedHashMap<>();
    pan.put("shape", shape);
    for (String field : fields.split(";")) {
      String[] parts = field.split("=");
      pan.put(parts[0], parts[1]);
    }
    return pan;
  }

  static Map<String, Object> count(Object pan, int count) {
    return Map.of("pan", pan, "count", count);
  }

  /** A round cake, in centimetres. */
  static Map<String, Object> round(double diameter, int layers, double layerHeight) {
    return Map.of(
        "shape",
        "round",
        "diameter",
        diameter + " cm",
        "layers",
        layers,
        "layerHeight",
        layerHeight + " cm");
  }

  /** A formula of 600 g that has this yield. */
  static Map<String, Object> sponge(Map<String, Object> yield) {
    return Map.of(
        "id",
        "plain-sponge",
        "title",
        "Plain sponge",
        "lines",
        List.of(
            Map.of("ingredient", "egg", "quantity", "300 g"),
            Map.of("ingredient", "sugar-granulated", "quantity", "150 g"),
            Map.of("ingredient", "all-purpose-flour", "quantity", "150 g")),
        "yield",
        yield);
  }

  /** The faults of an input that is refused. */
  static List<Fault> faults(ThrowingCallable call) {
    Refusal refusal = catchThrowableOfType(Refusal.class, call);
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }

  /** Code and pointer of each fault. */
  static List<String> told(ThrowingCallable call) {
    return faults(call).stream().map(f -> (f.code() + " " + f.pointer()).strip()).toList();
  }
}
