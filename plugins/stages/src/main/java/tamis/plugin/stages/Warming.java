package tamis.plugin.stages;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Power;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.thermal.Proximates;
import tamis.engine.thermal.ThermalProperties;

/**
 * The heat that brings a mass from one temperature to another, with what melts or sets on the way;
 * the part of it to melt and stir back for that; and how long a stove, or an ice bath, takes.
 */
public final class Warming implements Calculation<Warming.Input, Warming.Result> {

  /** What is warmed or cooled. */
  @ExactlyOne({"ingredient", "composition", "formula"})
  public record Input(
      @Described(value = "How much", moreThan = "0 g", atMost = "1000 kg", example = "1.2 kg")
          Mass mass,
      @Described(value = "Id or name of the ingredient", example = "butter-unsalted")
          @Nullable IngredientRef ingredient,
      @Described("What it is made of, in percent") @Nullable Proximates composition,
      @Described(value = "A formula that it is", example = "coffee-meringue-cream")
          @Nullable FormulaRef formula,
      @Described("Which fat it is, where only the composition is told") @Nullable FatKind fat,
      @Described(
              value = "Temperature now",
              atLeast = "-40 °C",
              atMost = "150 °C",
              example = "18 °C")
          Temperature from,
      @Described(
              value = "Temperature wanted",
              atLeast = "-40 °C",
              atMost = "150 °C",
              example = "22 °C")
          Temperature to,
      @Described(
              value = "Temperature that a part is brought to and stirred back",
              atLeast = "-40 °C",
              atMost = "150 °C",
              example = "35 °C")
          @Nullable Temperature portionAt,
      @Described(value = "Power of the stove", moreThan = "0 W", example = "800 W")
          @Nullable Power power,
      @Described(value = "Part of the power that gets into the bowl", example = "50 %")
          @Nullable Fraction efficiency) {
    public Input {
      Faults faults = new Faults();
      if (portionAt != null
          && (to.celsius() - from.celsius()) * (portionAt.celsius() - to.celsius()) <= 0) {
        faults.add(
            FaultCode.IMPOSSIBLE,
            "/portionAt",
            "a part at "
                + portionAt
                + " does not bring the rest from "
                + from
                + " to "
                + to
                + ": it must lie beyond what is wanted");
      }
      if (efficiency != null && (power == null || efficiency.value() == 0)) {
        faults.add(
            power == null ? FaultCode.MISSING : FaultCode.OUT_OF_BOUNDS,
            power == null ? "/power" : "/efficiency",
            "an efficiency above 0 goes with a power");
      }
      if (fat != null && composition == null) {
        faults.add(FaultCode.INCONSISTENT, "/fat", "fat is told only beside a composition");
      }
      faults.refuseIfAny();
    }
  }

  /** What it takes. */
  public record Result(
      @Described(
              value = "Heat that goes in, negative if it is to come out",
              unit = "kJ",
              headline = true)
          double kilojoules,
      @Described(value = "Least, by other published figures", unit = "kJ") double kilojoulesLow,
      @Described(value = "Most, by other published figures", unit = "kJ") double kilojoulesHigh,
      @Described(value = "Part to melt, or to chill, and stir back", unit = "1")
          @Nullable Double portionToMelt,
      @Described(value = "Mass of that part", unit = "g") @Nullable Double portionGrams,
      @Described(value = "Time at that power", unit = "min") @Nullable Double minutes,
      @Described(value = "Shortest time", unit = "min") @Nullable Double minutesLow,
      @Described(value = "Longest time", unit = "min") @Nullable Double minutesHigh,
      @Described(value = "Stirred in an ice bath", unit = "min") @Nullable Double iceBathMinutes,
      @Described(value = "Ice that melts of it", unit = "g") @Nullable Double iceGrams) {}

  @Override
  public String name() {
    return "warming";
  }

  @Override
  public String title() {
    return "The heat that brings a batch back, and how to bring it in";
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
    Proximates cream = new Proximates(38.0, 4.0, 36.0, 22.0, null, null);
    return List.of(
        new Input(
            Mass.ofKilograms(1.2),
            null,
            cream,
            null,
            FatKind.MILK,
            Temperature.ofCelsius(18),
            Temperature.ofCelsius(22),
            Temperature.ofCelsius(35),
            Power.ofWatts(800),
            null),
        new Input(
            Mass.ofGrams(500),
            IngredientRef.parse("butter-unsalted"),
            null,
            null,
            null,
            Temperature.ofCelsius(27),
            Temperature.ofCelsius(20),
            null,
            null,
            null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Makeup made =
        Makeup.of(input.ingredient(), input.composition(), input.formula(), input.fat(), kitchen);
    double kilograms = input.mass().grams() / 1000;
    Recovery recovery = new Recovery(made, kilograms, input.from().celsius(), input.to().celsius());
    Spread heat = recovery.kilojoules();
    @Nullable Double portion =
        input.portionAt() == null ? null : recovery.portion(input.portionAt().celsius());
    Double efficiency = input.efficiency() == null ? null : input.efficiency().value();
    @Nullable Spread minutes =
        input.power() == null || heat.typical() <= 0
            ? null
            : recovery.minutes(input.power().watts(), efficiency);
    @Nullable Spread ice = recovery.iceBathMinutes();
    note(input, made, minutes, efficiency, ice, notes);
    return Answer.of(
        new Result(
            heat.typical(),
            heat.low(),
            heat.high(),
            portion,
            portion == null ? null : portion * input.mass().grams(),
            minutes == null ? null : minutes.typical(),
            minutes == null ? null : minutes.low(),
            minutes == null ? null : minutes.high(),
            ice == null ? null : ice.typical(),
            heat.typical() < 0 ? recovery.iceGrams() : null),
        notes);
  }

  private static void note(
      Input input,
      Makeup made,
      @Nullable Spread minutes,
      @Nullable Double efficiency,
      @Nullable Spread ice,
      Notes notes) {
    notes.cite(
        Objects.requireNonNull(ThermalProperties.TABLE.row("water/specific-heat")), "/kilojoules");
    for (FatKind kind : FatKind.values()) {
      @Nullable SolidFat curve = SolidFat.of(kind);
      double part = kind == FatKind.MILK ? made.milkFat() : made.cocoaFat();
      if (curve != null && part > 0) {
        curve.cite(notes, "/kilojoules");
      }
    }
    if (input.composition() != null && input.fat() == null && made.fatPercent() > 1) {
      notes.remark(
          "fat-unknown",
          "/composition/fat",
          "it is not told which fat it is, so none is taken to melt; say `fat` milk or cocoa");
    }
    if (minutes != null && efficiency == null) {
      notes.estimate(
          "efficiency-assumed",
          "/power",
          String.format(
              Locale.ROOT,
              "half of the power is taken to get into the bowl; %.1f to %.1f minutes if it is 90 %%"
                  + " or 30 %%",
              minutes.low(),
              minutes.high()));
    }
    if (ice != null) {
      Surface.ICE_BATH.cite(notes, "/iceBathMinutes");
      notes.estimate(
          "ice-bath",
          "/to",
          String.format(
              Locale.ROOT,
              "an ice bath takes %.1f to %.1f minutes by how well it is stirred; read on the way",
              ice.low(),
              ice.high()));
    }
    if (made.egg()) {
      Cautions.rawEgg(notes, "");
    }
  }
}
