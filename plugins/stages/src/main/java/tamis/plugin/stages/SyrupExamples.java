package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;

/** Syrups to try the calculation with. */
final class SyrupExamples {
  private SyrupExamples() {}

  static List<SugarSyrup.Input> all() {
    return List.of(
        syrup("200 g", "60 g", null, "115 °C", null, "1500 m"),
        syrup(null, null, null, null, SyrupStage.SOFT_BALL, "5000 ft"),
        syrup(null, null, 80.0, null, null, null),
        syrup(null, null, null, null, null, "2000 m"));
  }

  private static SugarSyrup.Input syrup(
      @Nullable String sugar,
      @Nullable String water,
      @Nullable Double percent,
      @Nullable String temperature,
      @Nullable SyrupStage stage,
      @Nullable String altitude) {
    return new SugarSyrup.Input(
        sugar == null ? null : Mass.parse(sugar),
        water == null ? null : Mass.parse(water),
        percent,
        List.of(),
        temperature == null ? null : Temperature.parse(temperature),
        stage,
        null,
        null,
        altitude == null ? null : Length.parse(altitude),
        null,
        null,
        List.of(),
        null);
  }
}
