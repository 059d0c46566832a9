package tamis.plugin.stages;

import java.util.List;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Described;

/** What a thermometer showed, and when. */
public record TemperatureReading(
    @Described(
            value = "Minutes since the first look",
            unit = "min",
            atLeast = "0",
            atMost = "100000",
            example = "6.2")
        double minute,
    @Described(
            value = "What the thermometer showed",
            atLeast = "-60 °C",
            atMost = "250 °C",
            example = "60 °C")
        Thermometer temperature) {

  /** Readings run forward in time, on one scale. */
  static void check(List<TemperatureReading> readings, String pointer, Faults faults) {
    for (int i = 1; i < readings.size(); i++) {
      inOrder(readings.get(i - 1).minute(), readings.get(i).minute(), pointer + "/" + i, faults);
      oneScale(
          readings.get(0).temperature(),
          readings.get(i).temperature(),
          pointer + "/" + i + "/temperature",
          faults);
    }
  }

  static void inOrder(double before, double minute, String pointer, Faults faults) {
    if (!(minute > before)) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              pointer + "/minute",
              Double.toString(minute),
              "more than " + before,
              "readings must run forward in time: minute " + minute + " comes after " + before));
    }
  }

  static void oneScale(Thermometer first, Thermometer other, String pointer, Faults faults) {
    if (!first.scale().equals(other.scale())) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              pointer,
              other.scale(),
              first.scale(),
              "readings of one thermometer are on one scale: was "
                  + other.scale()
                  + " after "
                  + first.scale()));
    }
  }
}
