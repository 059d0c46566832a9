package tamis.plugin.stages;

import java.util.Locale;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.quantity.Mass;

/**
 * A reading as it was written; what it means is known together with what is measured.
 *
 * @param text as written
 */
public record Watched(String text) {
  public static Watched parse(String text) {
    return new Watched(text.strip());
  }

  /** A bare number, for what has no unit: pH, Brix, specific gravity. */
  public static Watched ofNumber(double number) {
    return new Watched(Bounds.plain(number));
  }

  /**
   * The number in the unit of the measure.
   *
   * @throws Refusal if it is no such reading
   */
  double as(Measure measure) {
    return switch (measure) {
      case TEMPERATURE -> Thermometer.parse(text).celsius();
      case MASS -> Mass.parse(text).grams();
      case BRIX -> plain(measure, "(?i)\\s*(°?\\s*bx|°?\\s*brix|%)$", 0, 100);
      case PH -> plain(measure, "(?i)^ph\\s*|\\s*ph$", 0, 14);
      case SPECIFIC_GRAVITY -> plain(measure, "(?i)\\s*sg$", 0.01, 3);
      case VOLUME_INCREASE -> plain(measure, "\\s*%$", 0, 10_000);
    };
  }

  private double plain(Measure measure, String unit, double low, double high) {
    String number = text.replaceFirst(unit, "").strip();
    if (!number.matches("\\d{1,9}(\\.\\d{1,9})?")) {
      throw new Refusal(
          new Fault(
              FaultCode.UNREADABLE_QUANTITY,
              "",
              text,
              "a number, for example " + example(measure),
              "`" + text + "` is no reading of " + words(measure) + "; write " + example(measure)));
    }
    return Bounds.within(Double.parseDouble(number), words(measure), "", low, high);
  }

  static String words(Measure measure) {
    return measure.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  static String unit(Measure measure) {
    return switch (measure) {
      case TEMPERATURE -> "°C";
      case MASS -> "g";
      case BRIX -> "°Bx";
      case VOLUME_INCREASE -> "%";
      case PH, SPECIFIC_GRAVITY -> "";
    };
  }

  private static String example(Measure measure) {
    return switch (measure) {
      case BRIX -> "65 °Bx";
      case PH -> "4.2";
      case SPECIFIC_GRAVITY -> "0.85";
      default -> "100 %";
    };
  }

  @Override
  public String toString() {
    return text;
  }
}
