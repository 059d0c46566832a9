package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;

/** Temperatures between which an ingredient behaves as the work needs it. */
public record ThermalWindow(
    @Described(value = "What it is for", example = "plastic", most = 60) String window,
    @Described(value = "Lowest temperature", example = "18 °C") Temperature low,
    @Described(value = "Highest temperature", example = "21 °C") Temperature high,
    @Described(value = "What a baker should know", most = 400) @Nullable String note) {
  public ThermalWindow {
    if (low.compareTo(high) > 0) {
      throw Refusal.of(FaultCode.INCONSISTENT, "/low", "low is above high: " + low + ", " + high);
    }
  }
}
