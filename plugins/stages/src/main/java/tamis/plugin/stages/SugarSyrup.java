package tamis.plugin.stages;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Pressure;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TemperatureDifference;
import tamis.engine.record.Described;
import tamis.engine.record.Limit;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * A syrup on the stove: temperature, part of sugar, stage and what is still to boil off, each from
 * another, at this height above the sea. Water boils by IAPWS-IF97 at the pressure of the standard
 * atmosphere; sugar raises that by the activity of water after Starzak and Peacock.
 */
public final class SugarSyrup implements Calculation<SugarSyrup.Input, SugarSyrup.Result> {

  /** What is in the pan, what was read, and where. */
  public record Input(
      @Described(
              value = "White sugar put in",
              moreThan = "0 g",
              atMost = "1000 kg",
              example = "200 g")
          @Nullable Mass sugar,
      @Described(value = "Water put in", atMost = "1000 kg", example = "60 g") @Nullable Mass water,
      @Described(
              value = "Part of sugar in the syrup, instead of the water",
              unit = "%",
              moreThan = "0",
              atMost = "98",
              example = "80")
          @Nullable Double sugarPercent,
      @Described(value = "Other syrups and sugars in the pan", optional = true, most = 20)
          List<Blend> with,
      @Described(
              value = "What the thermometer shows, or shall show",
              atLeast = "0 °C",
              atMost = "190 °C",
              example = "115 °C")
          @Nullable Temperature temperature,
      @Described(value = "The stage that is wanted", example = "soft-ball")
          @Nullable SyrupStage stage,
      @Described(
              value = "What the syrup weighs now, without the pan",
              moreThan = "0 g",
              atMost = "1000 kg",
              example = "236 g")
          @Nullable Mass weighed,
      @Described("Whose table of stages is followed; the confectioners' if left out")
          @Nullable StageAuthority authority,
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
      @Described(value = "Readings on the way", optional = true, limit = Limit.READINGS)
          List<TemperatureReading> readings,
      @Described(
              value = "How much earlier it is lifted off, for what the pan adds",
              atLeast = "0 °C",
              atMost = "10 °C",
              example = "1 °C")
          @Nullable TemperatureDifference carryOver) {
    public Input {
      Faults faults = new Faults();
      if (water != null && sugarPercent != null) {
        faults.add(
            FaultCode.EXACTLY_ONE,
            "/sugarPercent",
            "give the water or the part of sugar, not both: one follows from the other");
      }
      if (water != null && sugar == null && with.isEmpty()) {
        faults.add(FaultCode.MISSING, "/sugar", "water alone is no syrup; say how much sugar");
      }
      if (weighed != null && (sugar == null || (water == null && sugarPercent == null))) {
        faults.add(
            FaultCode.MISSING,
            sugar == null ? "/sugar" : "/water",
            "a weighed syrup tells its sugar only with the sugar and water that went in");
      }
      if (weighed != null && temperature != null) {
        faults.add(
            FaultCode.EXACTLY_ONE,
            "/weighed",
            "give the temperature or the weighed mass of the syrup, not both");
      }
      if (!readings.isEmpty() && stage == null && temperature == null) {
        faults.add(
            FaultCode.MISSING, "/stage", "readings foretell only with a stage or temperature");
      }
      Place.check(altitude, pressure, boilingWater, faults);
      TemperatureReading.check(readings, "/readings", faults);
      faults.refuseIfAny();
    }

    StageAuthority authorityOrUsual() {
      return authority == null ? StageAuthority.CONFECTIONERY : authority;
    }
  }

  /** The syrup as it is, or as it shall be. */
  public record Result(
      @Described(value = "What the thermometer shows when it boils", unit = "°C", headline = true)
          @Nullable Double boilingCelsius,
      @Described("The same by the modern equation and by an older table")
          @Nullable Window boilingRange,
      @Described(value = "Part of sugar", unit = "%") @Nullable Double sugarPercent,
      @Described("Stage of the syrup, unless it lies between two") @Nullable SyrupStage stage,
      @Described("The two stages it lies between") List<String> between,
      @Described("What each authority calls it") List<SyrupStages.Verdict> authorities,
      @Described(value = "The same syrup boils at this at sea level", unit = "°C")
          @Nullable Double seaLevelCelsius,
      @Described(value = "Water that boils off to get there", unit = "g")
          @Nullable Double waterToBoilOffGrams,
      @Described(value = "Water to stir in after cooking too far", unit = "g")
          @Nullable Double waterToAddGrams,
      @Described(value = "Mass of the syrup then", unit = "g") @Nullable Double syrupGrams,
      @Described("What the thermometer shows here at the wanted stage, in °C")
          @Nullable Window targetCelsius,
      @Described("When to lift it off, carry-over taken away, in °C") @Nullable Window liftCelsius,
      @Described(value = "Water boils here", unit = "°C") double waterBoilingCelsius,
      @Described(value = "What the thermometer shows too much", unit = "°C")
          double thermometerOffsetCelsius,
      @Described("When the target is reached, by the readings") @Nullable Forecast forecast,
      @Described("What to do, in order") List<String> advice) {}

  @Override
  public String name() {
    return "sugar-syrup";
  }

  @Override
  public String title() {
    return "Temperature, sugar and stage of a cooked syrup at this altitude";
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
    return SyrupExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new SyrupCook(input, kitchen).answer();
  }
}
