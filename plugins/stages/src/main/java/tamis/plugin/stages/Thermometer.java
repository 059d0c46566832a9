package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.Units;

/**
 * A temperature as it was read, with the scale it was read on: two scales in one series are a
 * mistake.
 *
 * @param celsius degrees Celsius
 * @param scale the unit as printed on the thermometer
 */
public record Thermometer(double celsius, String scale) implements Comparable<Thermometer> {

  /** Reads a temperature with its unit. */
  public static Thermometer parse(String text) {
    Temperature read = Temperature.parse(text);
    String unit = text.strip().replaceFirst("^[^\\p{L}°º℃℉]*", "");
    @Nullable String scale = Units.standard().name(unit);
    return new Thermometer(read.celsius(), scale == null ? "°C" : scale);
  }

  public static Thermometer ofCelsius(double celsius) {
    return new Thermometer(Temperature.ofCelsius(celsius).celsius(), "°C");
  }

  @Override
  public int compareTo(Thermometer other) {
    return Double.compare(celsius, other.celsius);
  }

  @Override
  public String toString() {
    if (scale.equals("°F")) {
      return Bounds.plain(Math.rint((celsius * 9 / 5 + 32) * 1e9) / 1e9) + " °F";
    }
    return scale.equals("K")
        ? Bounds.plain(Math.rint((celsius + 273.15) * 1e9) / 1e9) + " K"
        : Bounds.plain(celsius) + " °C";
  }
}
