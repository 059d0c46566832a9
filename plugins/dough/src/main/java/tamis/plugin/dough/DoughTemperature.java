package tamis.plugin.dough;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Shown;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TemperatureDifference;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * How warm the water must be for the dough to come out right, and how much of it must be ice. The
 * rule of the trade: water = n × desired − (flour + room + friction [+ preferment]), where n is how
 * many temperatures are counted, three or, with a preferment, four.
 */
public final class DoughTemperature
    implements Calculation<DoughTemperature.Input, DoughTemperature.Result> {

  /** What the thermometer says, and what is wanted. */
  public record Input(
      @Described(
              value = "Temperature that the mixed dough should have",
              atLeast = "0 °C",
              atMost = "60 °C",
              example = "24 °C")
          Temperature desired,
      @Described(
              value = "Temperature of the flour",
              atLeast = "-30 °C",
              atMost = "60 °C",
              example = "19 °C")
          Temperature flourTemperature,
      @Described(
              value = "Temperature of the room",
              atLeast = "-30 °C",
              atMost = "60 °C",
              example = "21 °C")
          Temperature roomTemperature,
      @Described(
              value = "Temperature of the preferment, if there is one; then four are counted",
              atLeast = "-30 °C",
              atMost = "60 °C",
              example = "20 °C")
          @Nullable Temperature prefermentTemperature,
      @Described(
              value =
                  "Friction factor of the mixer: a difference, not a reading, found with as many temperatures as are counted here",
              atLeast = "-30 °C",
              atMost = "100 °C",
              example = "12 °C")
          TemperatureDifference friction,
      @Described(value = "All the water, ice included", moreThan = "0 g", example = "10 kg")
          Mass waterMass,
      @Described(
              value = "Temperature of the water at hand; with it the ice is worked out",
              atLeast = "0 °C",
              atMost = "100 °C",
              example = "19 °C")
          @Nullable Temperature tapTemperature,
      @Described(
              value = "Temperature of the ice; melting at 0 °C if left out",
              atLeast = "-60 °C",
              atMost = "0 °C",
              example = "-18 °C")
          @Nullable Temperature iceTemperature,
      @Described("In whose measures `display` is written") @Nullable Shown units) {
    public Input {
      if (iceTemperature != null && tapTemperature == null) {
        throw Refusal.of(
            FaultCode.INCONSISTENT,
            "/iceTemperature",
            "ice is worked out from `tapTemperature`, which is missing");
      }
    }
  }

  /** The water, and how much of it is ice. */
  public record Result(
      @Described(value = "Temperature of the water", unit = "°C", headline = true)
          double waterCelsius,
      @Described("The same, as a thermometer is read") String display,
      @Described("How many temperatures were counted, the water's own among them")
          int temperaturesCounted,
      @Described(
              value = "Part of the water to weigh as ice; only with the temperature of the tap",
              unit = "g")
          @Nullable Double iceGrams,
      @Described(
              value = "Part of the water to draw from the tap; only with its temperature",
              unit = "g")
          @Nullable Double waterGrams) {}

  @Override
  public String name() {
    return "dough-temperature";
  }

  @Override
  public String title() {
    return "Temperature of the water, and ice, for a dough of the desired temperature";
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
    Temperature desired = Temperature.ofCelsius(24);
    TemperatureDifference friction = TemperatureDifference.ofKelvins(12);
    Mass water = Mass.ofKilograms(10);
    return List.of(
        new Input(desired, of(19), of(21), null, friction, water, null, null, null),
        new Input(desired, of(26), of(28), null, friction, water, of(19), null, null),
        new Input(desired, of(19), of(22), of(20), friction, water, null, null, Shown.US));
  }

  private static Temperature of(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Counted counted =
        Counted.of(
            input.flourTemperature(),
            input.roomTemperature(),
            input.prefermentTemperature(),
            notes,
            "/waterCelsius");
    double water =
        counted.number() * input.desired().celsius()
            - counted.celsius()
            - input.friction().kelvins();
    refuseImpossible(input, water);
    remarkOnFriction(input, notes);
    remarkOnHeat(water, notes);
    @Nullable Double ice = input.tapTemperature() == null ? null : IceShare.of(input, water, notes);
    return Answer.of(
        new Result(
            water,
            Thermometer.shown(water, input.units()),
            counted.number(),
            ice,
            ice == null ? null : input.waterMass().grams() - ice),
        notes);
  }

  private static void refuseImpossible(Input input, double water) {
    if (water > DoughConstants.value("boiling-water")) {
      throw impossible(
          input,
          "the water would have to be "
              + Thermometer.exact(water)
              + ", above its boiling point; warm the flour or the room, or ask for a cooler dough");
    }
    if (water < 0 && input.tapTemperature() == null) {
      throw impossible(
          input,
          "the water would have to be "
              + Thermometer.exact(water)
              + ", and no water is below 0 °C; give `tapTemperature`, and the ice that does it is worked out, or cool the flour");
    }
  }

  static Refusal impossible(Input input, String why) {
    return new Refusal(
        new Fault(FaultCode.IMPOSSIBLE, "/desired", input.desired().toString(), null, why));
  }

  private static void remarkOnFriction(Input input, Notes notes) {
    if (input.prefermentTemperature() != null) {
      notes.remark(
          "friction-of-four",
          "/friction",
          "four temperatures are counted; a friction that was found with three does not hold here");
    }
    if (input.friction().kelvins() > DoughConstants.value("friction-unusual-above")) {
      notes.remark(
          "friction-unusual",
          "/friction",
          "a friction of "
              + Thermometer.difference(input.friction().kelvins())
              + " is more than mixers give; it is a difference, so that 20 °F are 11.1 °C, not a reading");
    }
  }

  private static void remarkOnHeat(double water, Notes notes) {
    double harmed = DoughConstants.value("yeast-harmed-above");
    if (water > harmed) {
      DoughConstants.cited("yeast-harmed-above", notes, "/waterCelsius");
      notes.caution(
          "hot-water",
          "/desired",
          "water above "
              + Thermometer.exact(harmed)
              + " harms yeast that it touches and scalds hands; mix it with the flour first, or warm the flour");
    }
  }
}
