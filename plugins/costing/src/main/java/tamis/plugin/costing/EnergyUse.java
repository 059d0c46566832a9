package tamis.plugin.costing;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Energy;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Power;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** What heat and motion cost: in all, or stage by stage. */
@ExactlyOne({"total", "stages"})
public record EnergyUse(
    @Described(value = "Price of a kilowatt hour", example = "0.32 EUR") Money pricePerKilowattHour,
    @Described(
            value = "Energy of the whole batch; it is spread over the stages by their minutes",
            example = "6.5 kWh")
        @Nullable Energy total,
    @Described(value = "Energy stage by stage", optional = true, fewest = 1, most = 2_000)
        List<StageEnergy> stages) {

  /** The energy of one stage. */
  @ExactlyOne({"energy", "power"})
  public record StageEnergy(
      @Described(value = "Id of the stage, or formula/stage", example = "bake", most = 200)
          String stage,
      @Described(value = "Energy, all repeats together", example = "4 kWh") @Nullable Energy energy,
      @Described(value = "Power over the minutes of the stage", example = "3 kW")
          @Nullable Power power) {}

  public EnergyUse {
    Refusals.negative(pricePerKilowattHour, "/pricePerKilowattHour");
  }
}
