package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Power;
import tamis.engine.quantity.Pressure;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.record.Limit;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * Whether the readings of a stage lie inside its window here and now, when they will, and what
 * brings the batch back if they do not. The window of a syrup moves with the altitude.
 */
public final class StageCheck implements Calculation<StageCheck.Input, StageCheck.Result> {

  /** The stage and what was read. */
  @ExactlyOne({"formula+stage", "target", "ingredient+window"})
  public record Input(
      @Described(
              value = "Id, id@revision, or the whole document",
              example = "coffee-meringue-cream")
          @Nullable FormulaRef formula,
      @Described(value = "Stage of the formula", example = "syrup", most = 80)
          @Nullable String stage,
      @Described("The window, where no formula tells it") @Nullable StageTarget target,
      @Described(
              value = "Use of a kind, where the target tells no window",
              example = "white-foam",
              most = 60)
          @Nullable String use,
      @Described(value = "An ingredient whose own window is meant", example = "butter-unsalted")
          @Nullable IngredientRef ingredient,
      @Described(value = "Which of its windows", example = "plastic", most = 60)
          @Nullable String window,
      @Described(value = "What was read, in order of time", fewest = 1, limit = Limit.READINGS)
          List<StageReading> readings,
      @Described(
              value = "Height above the sea",
              atLeast = "-500 m",
              atMost = "6000 m",
              example = "1500 m")
          @Nullable Length altitude,
      @Described(
              value = "Pressure of the air, measured here",
              atLeast = "40 kPa",
              atMost = "110 kPa",
              example = "845 hPa")
          @Nullable Pressure pressure,
      @Described(
              value = "What the same thermometer shows in boiling water",
              atLeast = "70 °C",
              atMost = "110 °C",
              example = "95.5 °C")
          @Nullable Temperature boilingWater,
      @Described(value = "How the batch looks, if it failed", example = "curdled")
          @Nullable Symptom symptom,
      @Described("What is in the bowl; taken from the formula if left out")
          @Nullable StageBatch batch,
      @Described("At which size the formula is made; as written if left out") @Nullable To to,
      @Described(value = "Power of the stove", moreThan = "0 W", example = "800 W")
          @Nullable Power power,
      @Described(value = "Part of the power that gets into the bowl", example = "50 %")
          @Nullable Fraction efficiency) {
    public Input {
      Faults faults = new Faults();
      StageReading.check(readings, faults);
      Place.check(altitude, pressure, boilingWater, faults);
      if (to != null && formula == null) {
        faults.add(FaultCode.MISSING, "/formula", "`to` sizes a formula, but none is given");
      }
      if (efficiency != null && (power == null || efficiency.value() == 0)) {
        faults.add(
            power == null ? FaultCode.MISSING : FaultCode.OUT_OF_BOUNDS,
            power == null ? "/power" : "/efficiency",
            "an efficiency above 0 goes with a power");
      }
      if (target != null) {
        faults.gather("", () -> Aim.of(target, use, "/target"));
      }
      faults.refuseIfAny();
    }
  }

  /** Where it stands and what to do. */
  public record Result(
      @Described("Whether the last reading lies below, within or above the window") Verdict verdict,
      @Described(value = "The last reading", headline = true) double reading,
      @Described("Unit of the reading and the window; empty for a bare number") String unit,
      @Described("How far outside; negative below, positive above, 0 inside") double deviation,
      @Described("The window, corrected for here") StageWindow window,
      @Described("When it comes into the window, by the readings") @Nullable Forecast forecast,
      @Described(value = "Air beaten in, of the mix before", unit = "%")
          @Nullable Double aerationPercent,
      @Described("What brings the batch back, in figures") @Nullable Rescue recovery,
      @Described("What to do, in order") List<String> advice,
      @Described("Likely causes of the symptom, in order") List<Candidate> candidates,
      @Described("What can hurt") List<String> cautions) {}

  /** Where a reading lies. */
  public enum Verdict {
    BELOW,
    WITHIN,
    ABOVE
  }

  /** The window as this instrument shows it here. */
  public record StageWindow(
      @Described("Lowest reading inside") @Nullable Double low,
      @Described("Highest reading inside") @Nullable Double high,
      @Described("Lowest as written, for sea level and a true instrument")
          @Nullable Double writtenLow,
      @Described("Highest as written, for sea level and a true instrument")
          @Nullable Double writtenHigh,
      @Described("Whether altitude or the instrument moved it") boolean corrected) {}

  /** Ways back to the middle of the window. */
  public record Rescue(
      @Described(value = "Temperature to come to", unit = "°C") double toCelsius,
      @Described(value = "Heat that goes in, negative if it is to come out", unit = "kJ")
          @Nullable Double kilojoules,
      @Described(value = "Time at the stated power", unit = "min") @Nullable Double minutes,
      @Described(value = "Part to melt, or chill, and stir back", unit = "1")
          @Nullable Double portion,
      @Described(value = "To this temperature", unit = "°C") @Nullable Double portionAtCelsius,
      @Described(value = "Stirred in an ice bath", unit = "min") @Nullable Double iceBathMinutes,
      @Described(value = "In the refrigerator", unit = "min")
          @Nullable Double refrigeratorMinutes) {}

  /** One likely cause. */
  public record Candidate(
      @Described("The cause") String cause,
      @Described("The figure that speaks for or against it") String support,
      @Described("Whether the readings speak for it; left out if they say nothing")
          @Nullable Boolean supported,
      @Described("What helps") String remedy) {}

  @Override
  public String name() {
    return "stage-check";
  }

  @Override
  public String title() {
    return "Whether a stage lies in its window, when it will, and what brings it back";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    StageTarget syrup =
        new StageTarget(StageTarget.Kind.SUGAR_SYRUP, null, "112 °C", "116 °C", null);
    StageTarget cooling =
        new StageTarget(StageTarget.Kind.COOLING, null, "28 °C", "30 °C", "20 °C");
    StageTarget cream = new StageTarget(StageTarget.Kind.CREAM, null, "21 °C", "24 °C", null);
    return List.of(
        example(syrup, null, StageReading.of(0, "106 °C"), StageReading.of(3, "108 °C")),
        example(
            cooling,
            null,
            StageReading.of(0, "95 °C"),
            StageReading.of(10, "65.5 °C"),
            StageReading.of(20, "47.6 °C")),
        example(cream, Symptom.CURDLED, StageReading.of(0, "17 °C")));
  }

  private static Input example(
      StageTarget target, @Nullable Symptom symptom, StageReading... readings) {
    return new Input(
        null,
        null,
        target,
        null,
        null,
        null,
        List.of(readings),
        Length.ofMetres(0),
        null,
        null,
        symptom,
        null,
        null,
        null,
        null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new StageVerdict(input, kitchen).answer();
  }
}
