package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** One reading at a stage: a temperature, another value with its unit, or a weighed cup. */
@ExactlyOne({"temperature", "value", "full+water"})
public record StageReading(
    @Described(
            value = "Minutes since the first look",
            unit = "min",
            atLeast = "0",
            atMost = "100000",
            example = "4")
        @Nullable Double minute,
    @Described(
            value = "What the thermometer showed",
            atLeast = "-60 °C",
            atMost = "250 °C",
            example = "98 °C")
        @Nullable Thermometer temperature,
    @Described(value = "What was read, with its unit", example = "65 °Bx") @Nullable Watched value,
    @Described(value = "Cup full of batter or foam, with the cup", example = "210 g")
        @Nullable Mass full,
    @Described(value = "The same cup full of water, with the cup", example = "290 g")
        @Nullable Mass water,
    @Described(value = "The empty cup; 0 if the scale was set to zero", example = "50 g")
        @Nullable Mass tare,
    @Described(value = "The same cup full of the mix before beating", example = "285 g")
        @Nullable Mass plain) {
  public StageReading {
    double cup = tare == null ? 0 : tare.grams();
    if (full != null && water != null && (full.grams() <= cup || water.grams() <= cup)) {
      throw new Refusal(
          new Fault(
              FaultCode.IMPOSSIBLE,
              "/tare",
              String.valueOf(tare),
              "less than " + full + " and " + water,
              "the full cup must weigh more than the empty one"));
    }
    if (full == null && (tare != null || plain != null)) {
      throw Refusal.of(FaultCode.MISSING, "/full", "the mass of the full cup is missing");
    }
  }

  static StageReading of(double minute, String celsius) {
    return new StageReading(minute, Thermometer.parse(celsius), null, null, null, null, null);
  }

  double minuteOrStart() {
    return minute == null ? 0 : minute;
  }

  /**
   * @throws Refusal if something else than {@code measure} was read
   */
  double as(Measure measure) {
    if (full != null && water != null) {
      return same(measure, Measure.SPECIFIC_GRAVITY, "/full", gravity(full, water));
    }
    if (temperature != null) {
      return same(measure, Measure.TEMPERATURE, "/temperature", temperature.celsius());
    }
    try {
      return value == null ? 0 : value.as(measure);
    } catch (Refusal refusal) {
      throw refusal.under("/value");
    }
  }

  /** Air beaten in, in percent of the mix before, or null if that was not weighed. */
  @Nullable Double aeration() {
    if (full == null || plain == null) {
      return null;
    }
    double cup = tare == null ? 0 : tare.grams();
    return (plain.grams() - full.grams()) / (full.grams() - cup) * 100;
  }

  private double gravity(Mass filled, Mass ofWater) {
    double cup = tare == null ? 0 : tare.grams();
    return (filled.grams() - cup) / (ofWater.grams() - cup);
  }

  private static double same(Measure wanted, Measure read, String pointer, double value) {
    if (wanted != read) {
      throw Refusal.of(
          FaultCode.WRONG_DIMENSION,
          pointer,
          "the stage is watched by "
              + Watched.words(wanted)
              + ", but "
              + Watched.words(read)
              + " was read");
    }
    return value;
  }

  static void check(List<StageReading> readings, Faults faults) {
    @Nullable Thermometer first = null;
    for (int i = 0; i < readings.size(); i++) {
      StageReading reading = readings.get(i);
      String pointer = "/readings/" + i;
      if (readings.size() > 1 && reading.minute() == null) {
        faults.add(FaultCode.MISSING, pointer + "/minute", "a series of readings needs minutes");
      } else if (i > 0 && readings.get(i - 1).minute() != null) {
        TemperatureReading.inOrder(
            readings.get(i - 1).minuteOrStart(), reading.minuteOrStart(), pointer, faults);
      }
      Thermometer shown = reading.temperature();
      if (shown != null) {
        first = first == null ? shown : first;
        TemperatureReading.oneScale(first, shown, pointer + "/temperature", faults);
      }
    }
  }
}
