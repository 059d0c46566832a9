package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TemperatureDifference;
import tamis.engine.record.Described;

/** The temperatures within which parts can meet. */
public record MeetingWindow(
    @Described(value = "Lowest temperature inside", example = "20 °C") Temperature low,
    @Described(value = "Highest temperature inside", example = "26 °C") Temperature high,
    @Described(
            value = "How far the parts may be apart from each other",
            atLeast = "0 °C",
            example = "3 °C")
        @Nullable TemperatureDifference apart) {
  /** A tenth of a thermometer's step: what conversion between scales rounds. */
  static final double TOLERANCE = 1e-6;

  public MeetingWindow {
    if (low.compareTo(high) > 0) {
      throw Refusal.of(FaultCode.INCONSISTENT, "/low", "low is above high: " + low + ", " + high);
    }
  }

  /** How far outside: negative below, positive above, 0 inside. */
  double deviation(double celsius) {
    if (celsius < low.celsius() - TOLERANCE) {
      return celsius - low.celsius();
    }
    return celsius > high.celsius() + TOLERANCE ? celsius - high.celsius() : 0;
  }
}
