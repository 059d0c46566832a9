package tamis.engine.trial;

import java.time.LocalDateTime;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** One reading, symptom or note, with its time. */
public record Observation(
    @Described(
            value = "Chosen by the caller, so that a repeat is known as one",
            example = "o1",
            most = 80)
        String id,
    @Described(value = "Stage of the formula", example = "syrup", most = 80) @Nullable String stage,
    @Described(value = "Local time, ISO 8601", example = "2026-04-11T08:22") LocalDateTime at,
    @Described(
            value = "What was measured: temperature, brix, specific-gravity, ph, mass, duration …",
            example = "temperature",
            most = 40)
        @Nullable String measure,
    @Described(value = "The reading with its unit", example = "116 °C", most = 60)
        @Nullable String value,
    @Described(value = "How long the stage took", example = "11 min") @Nullable TimeSpan duration,
    @Described(
            value = "What went wrong: curdled, soupy, grainy, split, lumpy …",
            example = "curdled",
            most = 80)
        @Nullable String symptom,
    @Described(value = "Tasting score", atLeast = "0", atMost = "10", example = "8")
        @Nullable Double score,
    @Described(value = "Reference of a photo", most = 400) @Nullable String photo,
    @Described(value = "In the baker's words", most = 4_000) @Nullable String note) {
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?i)(?:ph\\s*)?\\d{1,9}(?:\\.\\d{1,9})?\\s*(?:°?\\s*bx|°?\\s*brix|sg|ph|%)?");

  /**
   * Checks that the value can be a reading of what it says was measured. Measures of a shop's own
   * are taken as they are.
   *
   * @throws Refusal if it cannot, with the pointer {@code /value}
   */
  public void checkReading() {
    if (measure == null || value == null) {
      return;
    }
    try {
      read(named(measure), value);
    } catch (Refusal unreadable) {
      Faults faults = new Faults();
      faults.addAll(unreadable, "/value");
      faults.refuseIfAny();
    }
  }

  private static String named(String measure) {
    return measure.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", "-");
  }

  private static void read(String measure, String value) {
    switch (measure) {
      case "temperature" -> Temperature.parse(value);
      case "mass" -> Mass.parse(value);
      case "duration" -> TimeSpan.parse(value);
      case "brix", "ph", "specific-gravity", "volume-increase" -> readNumber(measure, value);
      default -> {
        // a measure of the shop's own: nobody else knows its units
      }
    }
  }

  private static void readNumber(String measure, String value) {
    if (!NUMBER.matcher(value.strip()).matches()) {
      throw new Refusal(
          new Fault(
              FaultCode.UNREADABLE_QUANTITY,
              "",
              value,
              "a number, such as 65 °Bx, 4.2, 0.85 or 120 %",
              "`" + value + "` is no reading of " + measure + "; write a number"));
    }
  }
}
