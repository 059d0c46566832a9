package tamis.plugin.trials;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.quantity.Volume;
import tamis.engine.trial.Observation;

/**
 * What an observation read, as a number in one unit.
 *
 * @param measure what was measured, in lower-case words with hyphens
 * @param unit of the value; empty for a bare number
 */
record Reading(String measure, double value, String unit) {
  static final String TEMPERATURE = "temperature";
  private static final Pattern BARE =
      Pattern.compile(
          "(?i)(?:ph\\s*)?(-?\\d{1,12}(?:\\.\\d{1,12})?)\\s*(°?\\s*bx|°?\\s*brix|sg|ph|%)?");

  /** The reading, or null if it cannot be read as a number. */
  static @Nullable Reading of(Observation observation) {
    String text = observation.value();
    return text == null || text.isBlank() ? null : of(observation.measure(), text);
  }

  static @Nullable Reading of(@Nullable String said, String text) {
    @Nullable String measure = said == null ? null : named(said);
    if (measure == null || measure.endsWith(TEMPERATURE)) {
      @Nullable Double celsius = celsius(text);
      if (celsius != null) {
        return new Reading(measure == null ? TEMPERATURE : measure, celsius, "°C");
      }
    }
    boolean thermometer = measure != null && measure.endsWith(TEMPERATURE);
    return thermometer ? null : other(measure == null ? "reading" : measure, text);
  }

  /** {@code Specific gravity} is {@code specific-gravity}. */
  static String named(String measure) {
    return measure.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", "-");
  }

  private static @Nullable Double celsius(String text) {
    try {
      return Temperature.parse(text).celsius();
    } catch (Refusal none) {
      return null;
    }
  }

  private static @Nullable Reading other(String measure, String text) {
    Matcher bare = BARE.matcher(text.strip());
    if (bare.matches()) {
      @Nullable String mark = bare.group(2);
      String unit = mark == null ? "" : mark.toLowerCase(Locale.ROOT);
      boolean sugar = measure.equals("brix") || unit.endsWith("bx") || unit.endsWith("brix");
      String shown = sugar ? "°Bx" : unit.equals("%") || measure.endsWith("increase") ? "%" : "";
      return new Reading(measure, Double.parseDouble(bare.group(1)), shown);
    }
    try {
      return measured(measure, text, Quantity.parse(text));
    } catch (Refusal none) {
      return null;
    }
  }

  private static @Nullable Reading measured(String measure, String text, Quantity quantity) {
    if (!quantity.isMeasured()) {
      return null;
    }
    return switch (quantity.dimension()) {
      case MASS -> new Reading(measure, Mass.parse(text).grams(), "g");
      case VOLUME -> new Reading(measure, Volume.parse(text).millilitres(), "ml");
      case LENGTH -> new Reading(measure, Length.parse(text).centimetres(), "cm");
      case TIME -> new Reading(measure, TimeSpan.parse(text).minutes(), "min");
      default -> new Reading(measure, quantity.amount(), quantity.unit());
    };
  }
}
