package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** The window that a stage must end in. Low and high carry the unit of the measure. */
public record StageTarget(
    @Described(value = "What is watched", example = "sugar-syrup") @Nullable Kind kind,
    @Described(value = "What is measured", example = "temperature") @Nullable Measure measure,
    @Described(value = "Lowest reading inside the window", example = "116 °C", most = 40)
        @Nullable String low,
    @Described(value = "Highest reading inside the window", example = "121 °C", most = 40)
        @Nullable String high,
    @Described(value = "Temperature of the surroundings", example = "20 °C", most = 40)
        @Nullable String surroundings) {
  /** What is watched. */
  public enum Kind {
    SUGAR_SYRUP,
    COOLING,
    HEATING,
    FOAM,
    BUTTER,
    CHOCOLATE,
    CREAM,
    DOUGH,
    CUSTARD
  }

  /** What is measured. */
  public enum Measure {
    TEMPERATURE,
    BRIX,
    SPECIFIC_GRAVITY,
    PH,
    MASS,
    VOLUME_INCREASE
  }
}
