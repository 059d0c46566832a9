package tamis.plugin.stages;

import tamis.engine.record.Described;

/** When something will be, by the readings so far. */
public record Forecast(
    @Described(value = "Minute on the clock of the readings", unit = "min", headline = true)
        double minute,
    @Described(value = "Earliest", unit = "min") double low,
    @Described(value = "Latest", unit = "min") double high,
    @Described("What the forecast rests on") String basis) {

  static Forecast of(Fit.Moment moment, String basis) {
    return new Forecast(moment.minute(), moment.low(), moment.high(), basis);
  }
}
