package tamis.plugin.dough;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * The friction factor of a mixer from a dough that was made: n × measured − (flour + room + water
 * [+ preferment]), where n is how many temperatures are counted. It is what {@code
 * dough-temperature} asks for, of the same mixer, speed, time and size of batch.
 */
public final class FrictionFactor
    implements Calculation<FrictionFactor.Input, FrictionFactor.Result> {

  /** Readings of one dough. */
  public record Input(
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
              value = "Temperature of the water that was used",
              atLeast = "0 °C",
              atMost = "100 °C",
              example = "20 °C")
          Temperature waterTemperature,
      @Described(
              value = "Temperature of the preferment, if there was one; then four are counted",
              atLeast = "-30 °C",
              atMost = "60 °C",
              example = "20 °C")
          @Nullable Temperature prefermentTemperature,
      @Described(
              value = "Temperature of the mixed dough",
              atLeast = "-10 °C",
              atMost = "60 °C",
              example = "24 °C")
          Temperature measured) {}

  /** The friction factor, as a difference. */
  public record Result(
      @Described(value = "Friction factor, a difference", unit = "K", headline = true)
          double frictionKelvins,
      @Described(value = "The same for thermometers in Fahrenheit, a difference", unit = "°F")
          double frictionFahrenheit,
      @Described("How many temperatures were counted; use it with as many")
          int temperaturesCounted) {}

  @Override
  public String name() {
    return "friction-factor";
  }

  @Override
  public String title() {
    return "Friction factor of a mixer from the readings of a dough";
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
    return List.of(
        new Input(of(19), of(21), of(20), null, of(24)),
        new Input(of(19), of(22), of(26), of(20), of(25)));
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
            "/frictionKelvins");
    boolean preferment = input.prefermentTemperature() != null;
    double friction =
        counted.number() * input.measured().celsius()
            - counted.celsius()
            - input.waterTemperature().celsius();
    notes.remark(
        "friction-of-" + (preferment ? "four" : "three"),
        "",
        "found with "
            + (preferment ? "four" : "three")
            + " temperatures, so it holds for a dough "
            + (preferment ? "with" : "without")
            + " a preferment, of the same mixer, speed, time and size");
    if (friction < 0) {
      notes.remark(
          "friction-negative",
          "/measured",
          "the dough is colder than what went into it; unless bowl or flour were cooled, a reading is wrong");
    }
    return Answer.of(
        new Result(friction, Thermometer.fahrenheitOfDifference(friction), counted.number()),
        notes);
  }
}
