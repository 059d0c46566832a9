package tamis.plugin.dough;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.quantity.ScaleStep;
import tamis.engine.quantity.Shown;

/** Writes temperatures and differences for a person. */
final class Thermometer {
  private static final double FAHRENHEIT_PER_KELVIN = 1.8;
  private static final double FAHRENHEIT_OF_MELTING_ICE = 32;

  private Thermometer() {}

  /** To the whole degree, as most thermometers in a bakery are read. */
  static String shown(double celsius, @Nullable Shown units) {
    return units == Shown.US
        ? Bounds.plain(Math.rint(fahrenheit(celsius)) + 0.0) + " °F"
        : Bounds.plain(Math.rint(celsius) + 0.0) + " °C";
  }

  /** To the tenth. */
  static String exact(double celsius) {
    return Bounds.plain(tenth(celsius)) + " °C";
  }

  /** A difference to the tenth, in both scales, as they convert differently from readings. */
  static String difference(double kelvins) {
    return Bounds.plain(tenth(kelvins))
        + " °C ("
        + Bounds.plain(tenth(fahrenheitOfDifference(kelvins)))
        + " °F)";
  }

  static double fahrenheitOfDifference(double kelvins) {
    return kelvins * FAHRENHEIT_PER_KELVIN;
  }

  private static double fahrenheit(double celsius) {
    return fahrenheitOfDifference(celsius) + FAHRENHEIT_OF_MELTING_ICE;
  }

  private static double tenth(double value) {
    return ScaleStep.round(value, 0.1) + 0.0;
  }
}
