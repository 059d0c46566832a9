package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;

/** When a syrup gets to its target, from what was read so far. */
final class SyrupForecast {
  /** Misses of more than so many times what a reading is sure to. */
  private static final double TOO_SCATTERED = 3;

  private SyrupForecast() {}

  static @Nullable Forecast of(
      SyrupPan pan, Place place, List<TemperatureReading> readings, double goal, Notes notes) {
    pan.solutes().checkRange(goal, place.pascals(), "/readings");
    Evaporation evaporation = new Evaporation(pan.solutes(), place);
    Evaporation.@Nullable Forecast boiling = evaporation.boiling(readings, goal);
    if (boiling != null) {
      if (boiling.scatter() > TOO_SCATTERED) {
        notes.remark(
            "readings-do-not-fit",
            "/readings",
            String.format(
                Locale.ROOT,
                "the readings do not follow a steady flame: they miss it by %.0f times what a"
                    + " thermometer does; the forecast is wide for that",
                boiling.scatter()));
      }
      return Forecast.of(boiling.moment(), "water boils off at a steady rate");
    }
    if (pan.percent() != null) {
      Evaporation.@Nullable Forecast heating = evaporation.heating(readings, pan.percent(), goal);
      if (heating != null) {
        notes.estimate(
            "before-boiling",
            "/readings",
            "it does not boil yet: the time is worked out from how fast it warms; read again when"
                + " it boils");
        return Forecast.of(heating.moment(), "how fast it warms before it boils");
      }
    }
    notes.remark(
        "no-forecast",
        "/readings",
        "nothing can be foretold yet: two readings of the boiling syrup are needed, the later hotter");
    return null;
  }
}
