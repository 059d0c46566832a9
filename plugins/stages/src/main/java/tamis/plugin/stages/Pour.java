package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;

/**
 * How the hot part is poured. What is still in the pan cools while it waits, then in the stream.
 */
public record Pour(
    @Described(
            value = "How long the pour takes",
            unit = "min",
            atLeast = "0",
            atMost = "60",
            example = "2")
        double minutes,
    @Described(
            value = "Thickness of the stream; 5 mm if left out",
            atLeast = "1 mm",
            atMost = "100 mm",
            example = "5 mm")
        @Nullable Length stream,
    @Described(
            value = "How far it falls; 20 cm if left out",
            atLeast = "0 cm",
            atMost = "200 cm",
            example = "20 cm")
        @Nullable Length fall,
    @Described(
            value = "Temperature of the room; 21 °C if left out",
            atLeast = "-30 °C",
            atMost = "60 °C",
            example = "21 °C")
        @Nullable Temperature room) {
  private static final double SECONDS_PER_MINUTE = 60;

  double roomCelsius() {
    return room == null ? 21 : room.celsius();
  }

  double streamMetres() {
    return stream == null ? 0.005 : stream.metres();
  }

  double fallMetres() {
    return fall == null ? 0.2 : fall.metres();
  }

  /**
   * Mean temperature at which the part reaches the bowl. The pan empties evenly and so does its
   * surface, so each drop has cooled after Newton for as long as it waited.
   *
   * @param pan W/(m²·K)
   * @param stream W/(m²·K)
   */
  double arrival(Hot hot, double pan, double stream) {
    double seconds = minutes * SECONDS_PER_MINUTE;
    if (seconds == 0) {
      return hot.celsius();
    }
    double heat = hot.joulesPerKelvin();
    double waited = pan * Surface.PAN.area(hot.kilograms()) * seconds / heat;
    double fallen = stream * Math.PI * streamMetres() * fallMetres() * seconds / heat;
    double left = -Math.expm1(-waited) / waited * Math.exp(-fallen);
    return roomCelsius() + (hot.celsius() - roomCelsius()) * left;
  }

  /** What is poured. */
  record Hot(double kilograms, double celsius, double joulesPerKelvin) {}
}
