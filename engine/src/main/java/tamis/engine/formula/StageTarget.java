package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
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
  public StageTarget {
    Faults faults = new Faults();
    @Nullable Double least = read(measure, low, "/low", faults);
    @Nullable Double most = read(measure, high, "/high", faults);
    if (least != null && most != null && least > most) {
      faults.add(FaultCode.INCONSISTENT, "/low", "low is above high: " + low + ", " + high);
    }
    read(Measure.TEMPERATURE, surroundings, "/surroundings", faults);
    faults.refuseIfAny();
  }

  /** The figure of what has a unit of its own; others are read where they are watched. */
  private static @Nullable Double read(
      @Nullable Measure measure, @Nullable String text, String pointer, Faults faults) {
    if (text == null) {
      return null;
    }
    if (measure == null || measure == Measure.TEMPERATURE) {
      return faults.gather(pointer, () -> Temperature.parse(text).celsius());
    }
    return measure == Measure.MASS ? faults.gather(pointer, () -> Mass.parse(text).grams()) : null;
  }

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
