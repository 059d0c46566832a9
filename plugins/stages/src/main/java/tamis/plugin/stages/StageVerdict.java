package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.note.Notes;
import tamis.engine.record.Nearest;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/** Works out one check of a stage. */
final class StageVerdict {
  /** What is read in °F and compared in °C is off by no more. */
  private static final double TOLERANCE = 1e-6;

  private static final Set<StageTarget.Kind> EGG_KINDS =
      Set.of(StageTarget.Kind.FOAM, StageTarget.Kind.CREAM, StageTarget.Kind.CUSTARD);

  private final StageCheck.Input input;
  private final Kitchen kitchen;
  private final Notes notes = new Notes();
  private final Aim aim;
  private final Place place;
  private final double[] values;

  StageVerdict(StageCheck.Input input, Kitchen kitchen) {
    this.input = input;
    this.kitchen = kitchen;
    this.aim = aim(input, kitchen);
    boolean here =
        input.altitude() != null || input.pressure() != null || input.boilingWater() != null;
    this.place =
        aim.isSyrup() || here
            ? Place.of(input.altitude(), input.pressure(), input.boilingWater(), notes)
            : Place.SEA_LEVEL;
    this.values = values();
  }

  Answer<StageCheck.Result> answer() {
    StageCheck.StageWindow window = window();
    double reading = values[values.length - 1];
    double deviation = deviation(window, reading);
    StageCheck.Verdict verdict = verdict(deviation);
    @Nullable Forecast forecast =
        verdict == StageCheck.Verdict.WITHIN ? null : forecast(window, deviation);
    @Nullable StageBill bill = deviation == 0 ? null : StageBill.of(input, kitchen);
    StageAdvice adviser = new StageAdvice(input, aim, place, bill);
    StageCheck.@Nullable Rescue rescue =
        deviation == 0 ? null : adviser.rescue(reading, middle(window));
    List<String> cautions = cautions(bill);
    String shown = shown(reading, window, deviation);
    StageCheck.Result result =
        new StageCheck.Result(
            verdict,
            reading,
            Watched.unit(aim.measure()),
            deviation,
            window,
            forecast,
            input.readings().get(values.length - 1).aeration(),
            rescue,
            adviser.lines(verdict, reading, middle(window), forecast, rescue),
            input.symptom() == null
                ? List.of()
                : Symptoms.of(input.symptom(), verdict, shown, notes),
            cautions);
    return Answer.of(result, notes);
  }

  private static Aim aim(StageCheck.Input input, Kitchen kitchen) {
    if (input.target() != null) {
      return Aim.of(input.target(), input.use(), "/target");
    }
    if (input.ingredient() != null && input.window() != null) {
      return Aim.of(kitchen.ingredient(input.ingredient()), input.window());
    }
    if (input.formula() == null || input.stage() == null) {
      throw new IllegalStateException("a formula with its stage, or a target, was read");
    }
    Formula formula = kitchen.formula(input.formula());
    List<String> known = new ArrayList<>();
    for (Stage stage : formula.stages()) {
      if (stage.id().equals(input.stage())) {
        if (stage.target() == null) {
          throw Refusal.of(
              FaultCode.MISSING,
              "/stage",
              "stage `" + stage.id() + "` of " + formula.name() + " has no target to check");
        }
        return Aim.of(stage.target(), input.use(), "/stage");
      }
      known.add(stage.id());
    }
    throw new Refusal(
        new Fault(
            FaultCode.UNKNOWN_STAGE,
            "/stage",
            input.stage(),
            String.join(", ", known),
            formula.name()
                + " has no stage `"
                + input.stage()
                + "`"
                + Nearest.suggestion(input.stage(), known)));
  }

  private double[] values() {
    Faults faults = new Faults();
    double[] read = new double[input.readings().size()];
    for (int i = 0; i < read.length; i++) {
      StageReading reading = input.readings().get(i);
      @Nullable Double value = faults.gather("/readings/" + i, () -> reading.as(aim.measure()));
      read[i] = value == null ? 0 : value;
    }
    faults.refuseIfAny();
    return read;
  }

  private StageCheck.StageWindow window() {
    if (aim.row() != null) {
      notes.cite(aim.row(), "/window");
    }
    if (input.ingredient() != null) {
      Ingredient own = kitchen.ingredient(input.ingredient());
      @Nullable Row row = IngredientTables.WINDOWS.row(own.id() + "/" + input.window());
      if (row != null) {
        notes.cite(row, "/window");
      }
    }
    @Nullable Double low = aim.low();
    @Nullable Double high = aim.high();
    if (aim.measure() == Measure.TEMPERATURE) {
      if (aim.isSyrup()) {
        place.cite(notes, "/window");
        Equation.SUCROSE_ACTIVITY.cite(notes, "/window");
      }
      low = low == null ? null : here(low);
      high = high == null ? null : here(high);
    }
    boolean corrected = moved(low, aim.low()) || moved(high, aim.high());
    return new StageCheck.StageWindow(low, high, aim.low(), aim.high(), corrected);
  }

  private static boolean moved(@Nullable Double here, @Nullable Double written) {
    return here != null && written != null && Math.abs(here - written) > 0.01;
  }

  private double here(double written) {
    if (!aim.isSyrup()) {
      return place.reading(written);
    }
    double reading =
        new SyrupTarget(Solutes.SUCROSE, place, StageAuthority.CONFECTIONERY)
            .reading(new Window(written, written))
            .low();
    // At sea level with a true thermometer the window stays as it is written.
    return Math.abs(reading - written) < 1e-6 ? written : reading;
  }

  private static double deviation(StageCheck.StageWindow window, double reading) {
    if (window.low() != null && reading < window.low() - TOLERANCE) {
      return reading - window.low();
    }
    return window.high() != null && reading > window.high() + TOLERANCE
        ? reading - window.high()
        : 0;
  }

  private static StageCheck.Verdict verdict(double deviation) {
    if (deviation == 0) {
      return StageCheck.Verdict.WITHIN;
    }
    return deviation < 0 ? StageCheck.Verdict.BELOW : StageCheck.Verdict.ABOVE;
  }

  private @Nullable Forecast forecast(StageCheck.StageWindow window, double deviation) {
    @Nullable Double end = deviation < 0 ? window.low() : window.high();
    double goal = end == null ? 0 : end;
    if (aim.isSyrup()) {
      if (deviation > 0) {
        return null;
      }
      List<TemperatureReading> readings = new ArrayList<>();
      for (int i = 0; i < values.length; i++) {
        readings.add(
            new TemperatureReading(
                input.readings().get(i).minuteOrStart(), Thermometer.ofCelsius(values[i])));
      }
      return SyrupForecast.of(
          new SyrupPan(Solutes.SUCROSE, null, null), place, readings, place.truth(goal), notes);
    }
    double[] minutes = input.readings().stream().mapToDouble(StageReading::minuteOrStart).toArray();
    @Nullable Forecast forecast =
        new Series(minutes, values, aim.measure(), notes).reaches(goal, aim.surroundings());
    if (forecast != null && aim.measure() == Measure.TEMPERATURE) {
      Equation.NEWTON_COOLING.cite(notes, "/forecast");
    }
    return forecast;
  }

  private static double middle(StageCheck.StageWindow window) {
    if (window.low() == null) {
      return window.high() == null ? 0 : window.high();
    }
    return window.high() == null ? window.low() : (window.low() + window.high()) / 2;
  }

  private String shown(double reading, StageCheck.StageWindow window, double deviation) {
    String unit = Watched.unit(aim.measure());
    String place =
        deviation == 0
            ? "inside"
            : String.format(
                Locale.ROOT,
                "%.2f %s %s",
                Math.abs(deviation),
                unit,
                deviation < 0 ? "below" : "above");
    return String.format(
        Locale.ROOT,
        "the last reading of %.2f %s lies %s the window%s%s",
        reading,
        unit,
        place,
        window.low() == null ? "" : String.format(Locale.ROOT, " from %.2f", window.low()),
        window.high() == null ? "" : String.format(Locale.ROOT, " to %.2f", window.high()));
  }

  private List<String> cautions(@Nullable StageBill bill) {
    List<String> cautions = new ArrayList<>();
    if (aim.isSyrup()) {
      cautions.add(Cautions.HOT_SUGAR);
      Cautions.hotSugar(notes, "/readings");
    }
    boolean egg = aim.kind() != null && EGG_KINDS.contains(aim.kind());
    if (egg || (bill != null && bill.made().egg())) {
      cautions.add(Cautions.RAW_EGG);
      Cautions.rawEgg(notes, "/readings");
    }
    return cautions;
  }
}
