package tamis.plugin.costing;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** What hands cost. */
public record Labour(
    @Described(value = "What an hour of work costs", example = "21.50 EUR") Money ratePerHour,
    @Described(
            value = "Hands' time at a stage, in place of the formula's own duration",
            optional = true,
            most = 2_000)
        List<StageTime> stages) {

  /** The time of one stage, all its repeats together. */
  public record StageTime(
      @Described(value = "Id of the stage, or formula/stage", example = "syrup", most = 200)
          String stage,
      @Described(value = "How long it takes hands", example = "12 min") TimeSpan duration,
      @Described("What an hour costs at this stage, if it differs") @Nullable Money ratePerHour) {
    public StageTime {
      Refusals.negative(ratePerHour, "/ratePerHour");
    }
  }

  public Labour {
    Refusals.negative(ratePerHour, "/ratePerHour");
  }
}
