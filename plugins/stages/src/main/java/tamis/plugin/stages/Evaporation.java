package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * When a boiling syrup gets to a temperature. On a steady flame water leaves at a steady rate, so
 * the water left for each gram of sugar falls along a line, though the temperature does not. Before
 * it boils, the heating rate tells the heat that goes in, and that heat tells the rate at which it
 * will boil off.
 */
final class Evaporation {
  /** How sure a reading in a boiling pan is, in K. */
  private static final double SURENESS = 0.5;

  /** kJ/kg at 100 °C. */
  static final double HEAT_OF_VAPORISATION = 2257;

  /** How far a flame's rate is off when only the heating was watched. */
  private static final double HEATING_SPREAD = 0.4;

  private static final double LONGEST_MINUTES = 600;

  private final Solutes solutes;
  private final Place place;

  Evaporation(Solutes solutes, Place place) {
    this.solutes = solutes;
    this.place = place;
  }

  /**
   * @param moment when the goal is reached
   * @param scatter of the readings, in units of how sure they are
   * @param gramsPerMinute water that leaves for each gram of sugar
   */
  record Forecast(Fit.Moment moment, double scatter, double gramsPerMinute) {}

  /** From readings of the boiling syrup; null with fewer than two, or if it does not get there. */
  @Nullable Forecast boiling(List<TemperatureReading> readings, double goalCelsius) {
    List<TemperatureReading> boiling = new ArrayList<>();
    for (TemperatureReading reading : readings) {
      if (percent(reading) > 20) {
        boiling.add(reading);
      }
    }
    if (boiling.size() < 2) {
      return null;
    }
    int count = boiling.size();
    double[] minutes = new double[count];
    double[] water = new double[count];
    double[] sureness = new double[count];
    for (int i = 0; i < count; i++) {
      double celsius = place.truth(boiling.get(i).temperature().celsius());
      minutes[i] = boiling.get(i).minute();
      water[i] = waterAt(celsius);
      sureness[i] = Math.max(1e-4, (waterAt(celsius - SURENESS) - waterAt(celsius + SURENESS)) / 2);
    }
    double slope = (water[count - 1] - water[0]) / (minutes[count - 1] - minutes[0]);
    @Nullable Fit fit =
        Fit.of(
            (minute, p) -> p[0] + p[1] * minute,
            minutes,
            water,
            sureness,
            new double[] {water[0] - slope * minutes[0], slope});
    if (fit == null || fit.parameter(1) >= 0) {
      return null;
    }
    Fit.@Nullable Moment moment =
        fit.reaches(waterAt(goalCelsius), 0, minutes[count - 1] + LONGEST_MINUTES);
    return moment == null ? null : new Forecast(moment, fit.scatter(), -fit.parameter(1));
  }

  /**
   * From readings before it boils, of a syrup whose sugar and water are known.
   *
   * @param start percent of solids at the start
   */
  @Nullable Forecast heating(List<TemperatureReading> readings, double start, double goalCelsius) {
    if (readings.size() < 2) {
      return null;
    }
    TemperatureReading first = readings.get(0);
    TemperatureReading last = readings.get(readings.size() - 1);
    double warming =
        (last.temperature().celsius() - first.temperature().celsius())
            / (last.minute() - first.minute());
    if (warming <= 0) {
      return null;
    }
    double now = place.truth(last.temperature().celsius());
    double boils = solutes.boilingPoint(start, place.pascals());
    double untilBoiling = Math.max(0, (boils - now) / warming);
    double syrupPerSugar = 100 / start;
    double heat = SugarHeat.specificHeat(start, (now + boils) / 2) * syrupPerSugar * warming;
    double rate = heat / HEAT_OF_VAPORISATION;
    double boilingMinutes = Math.max(0, (100 - start) / start - waterAt(goalCelsius)) / rate;
    double from = last.minute() + untilBoiling;
    return new Forecast(
        new Fit.Moment(
            from + boilingMinutes,
            from + boilingMinutes * (1 - HEATING_SPREAD),
            from + boilingMinutes * (1 + HEATING_SPREAD)),
        0,
        rate);
  }

  private double percent(TemperatureReading reading) {
    return solutes.percent(place.truth(reading.temperature().celsius()), place.pascals());
  }

  /** Grams of water for a gram of solids in a syrup that boils at this temperature. */
  private double waterAt(double celsius) {
    double percent = Math.max(1, solutes.percent(celsius, place.pascals()));
    return (100 - percent) / percent;
  }
}
