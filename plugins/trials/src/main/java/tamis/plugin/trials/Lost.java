package tamis.plugin.trials;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** What the discarded trials cost. */
public record Lost(
    @Described("Cost of all that are known, by prices as they are now; left out if none is known")
        @Nullable Money total,
    @Described("Each discarded trial") List<LostTrial> trials,
    @Described("How many of them have no known cost; they are not in the total") int unknown) {
  public Lost {
    trials = List.copyOf(trials);
  }

  /** One discarded trial. */
  public record LostTrial(
      @Described(value = "Id of the trial", example = "t4") String trial,
      @Described("Cost of its batch as the formula says; left out if it is not known")
          @Nullable Money cost) {}
}
