package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** The window of a measure, in its unit, as the instrument shows it here. */
public record MeasureWindow(
    @Described("Lowest reading inside") @Nullable Double low,
    @Described("Highest reading inside") @Nullable Double high,
    @Described("Lowest as written, for sea level and a true instrument")
        @Nullable Double writtenLow,
    @Described("Highest as written, for sea level and a true instrument")
        @Nullable Double writtenHigh,
    @Described("Whether altitude or the instrument moved it") boolean corrected) {
  /** What is read in °F and compared in °C is off by no more. */
  private static final double TOLERANCE = 1e-6;

  /** How far outside: negative below, positive above, 0 inside. */
  double deviation(double reading) {
    if (low != null && reading < low - TOLERANCE) {
      return reading - low;
    }
    return high != null && reading > high + TOLERANCE ? reading - high : 0;
  }

  /** From end to end, or 0 if it has one end only. */
  double width() {
    return low == null || high == null ? 0 : high - low;
  }

  /** {@code 18 to 21 °C}, {@code at least 24 °C}. */
  String words(String unit) {
    if (low == null) {
      return "at most " + Words.amount(high == null ? 0 : high, unit);
    }
    return high == null
        ? "at least " + Words.amount(low, unit)
        : Words.number(low) + " to " + Words.amount(high, unit);
  }
}
