package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.thermal.Proximates;

/**
 * The temperature that parts come to when they meet: the heat that some give off the others take
 * up, with the bowl, with what the room takes during a pour, and with what melts or sets. With a
 * window it says which part lies outside before they meet. For a single composition it tells its
 * heat capacity, density and conductivity.
 */
public final class HeatBalance implements Calculation<HeatBalance.Input, HeatBalance.Result> {

  /** The parts, or one composition. */
  @ExactlyOne({"parts", "composition+temperature"})
  public record Input(
      @Described(value = "The parts that meet", optional = true, most = 100) List<Part> parts,
      @Described("How the hottest of them is poured") @Nullable Pour pour,
      @Described("The bowl that is warmed along") @Nullable Bowl bowl,
      @Described("The temperatures at which the parts can meet") @Nullable MeetingWindow window,
      @Described("One composition whose properties are wanted") @Nullable Proximates composition,
      @Described(
              value = "At this temperature",
              atLeast = "0 °C",
              atMost = "150 °C",
              example = "20 °C")
          @Nullable Temperature temperature) {
    public Input {
      Faults faults = new Faults();
      if (composition != null && (pour != null || bowl != null || window != null)) {
        faults.add(
            FaultCode.INCONSISTENT, "/composition", "pour, bowl and window go with parts only");
      }
      boolean met = parts.stream().anyMatch(Part::isWhole);
      for (int i = 0; i < parts.size(); i++) {
        if (window == null || pour != null || bowl != null || met) {
          parts.get(i).needWhole("/parts/" + i, faults);
        }
      }
      faults.refuseIfAny();
    }
  }

  /** What comes of it. */
  public record Result(
      @Described(value = "Temperature after mixing", unit = "°C", headline = true)
          @Nullable Double celsius,
      @Described(value = "Lowest, by other published figures and faster loss", unit = "°C")
          @Nullable Double low,
      @Described(value = "Highest, by other published figures and slower loss", unit = "°C")
          @Nullable Double high,
      @Described(value = "Each part with its heat", table = true) List<PartHeat> parts,
      @Described(value = "Heat that the bowl takes up", unit = "kJ")
          @Nullable Double bowlKilojoules,
      @Described("What the room takes during the pour") @Nullable PourLoss pour,
      @Described("What the fat does at that temperature") @Nullable FatState fat,
      @Described(value = "Between the coldest and the warmest part", unit = "°C")
          @Nullable Double spreadCelsius,
      @Described("Parts outside the window") List<Outside> out,
      @Described("Whether all of them together come to lie in the window")
          @Nullable Boolean mixedWithin,
      @Described("What to do, in order") List<String> advice,
      @Described(value = "Specific heat of the composition", unit = "kJ/(kg·K)")
          @Nullable Double specificHeat,
      @Described(value = "Density of the composition, without air", unit = "kg/m³")
          @Nullable Double density,
      @Described(value = "Thermal conductivity of the composition", unit = "W/(m·K)")
          @Nullable Double conductivity) {}

  /** One part. */
  public record PartHeat(
      @Described("The part") String name,
      @Described(value = "Mass", unit = "g") double grams,
      @Described(value = "Temperature before", unit = "°C") double celsius,
      @Described(value = "Heat it takes up, negative if it gives off", unit = "kJ")
          double kilojoules,
      @Described(value = "Specific heat before, with what melts", unit = "kJ/(kg·K)")
          double specificHeat) {}

  /** The pour, with the figures it rests on. */
  public record PourLoss(
      @Described("What is poured") String part,
      @Described(value = "How long", unit = "min") double minutes,
      @Described(value = "Mean temperature at which it reaches the bowl", unit = "°C")
          double arrivesCelsius,
      @Described(value = "Heat that the room takes", unit = "kJ") double kilojoules,
      @Described(value = "Temperature of the room", unit = "°C") double roomCelsius,
      @Described(value = "Loss of the pan", unit = "W/(m²·K)") double panLoss,
      @Described(value = "Loss of the stream", unit = "W/(m²·K)") double streamLoss,
      @Described(value = "Thickness of the stream", unit = "mm") double streamMillimetres) {}

  /** The fat at the temperature of the mix. */
  public record FatState(
      @Described("Which fat") FatKind fat,
      @Described(value = "Part of the fat that is solid", unit = "%") double solidPercent,
      @Described("What that means: firm, plastic, soft, oily or melted") String state) {}

  /** A part outside the window. */
  public record Outside(
      @Described("The part") String name,
      @Described(value = "Its temperature", unit = "°C") double celsius,
      @Described(value = "How far outside; negative below, positive above", unit = "°C")
          double deviationCelsius,
      @Described("below or above") String side,
      @Described(value = "Heat that brings it to the nearer end", unit = "kJ")
          @Nullable Double kilojoules) {}

  @Override
  public String name() {
    return "heat-balance";
  }

  @Override
  public String title() {
    return "The temperature that parts come to, and whether they can meet";
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
    Proximates syrup = new Proximates(15.0, null, null, 85.0, null, null);
    Proximates egg = new Proximates(75.33, 12.49, 10.02, 1.22, null, 0.94);
    Pour pour = new Pour(2, null, null, null);
    return List.of(
        new Input(
            List.of(
                part(null, "egg-yolk", null, "100 g", "20 °C"),
                part("syrup", null, syrup, "200 g", "118 °C")),
            pour,
            null,
            null,
            null,
            null),
        new Input(
            List.of(
                part("foam", "egg", null, "300 g", "25 °C"),
                part("butter", "butter-unsalted", null, "400 g", "17 °C")),
            null,
            null,
            new MeetingWindow(Temperature.ofCelsius(20), Temperature.ofCelsius(26), null),
            null,
            null),
        new Input(List.of(), null, null, null, egg, Temperature.ofCelsius(20)));
  }

  private static Part part(
      @Nullable String name,
      @Nullable String ingredient,
      @Nullable Proximates composition,
      String mass,
      String celsius) {
    return new Part(
        name,
        ingredient == null ? null : IngredientRef.parse(ingredient),
        composition,
        (FormulaRef) null,
        null,
        Mass.parse(mass),
        Temperature.parse(celsius));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Meeting(input, kitchen).answer();
  }
}
