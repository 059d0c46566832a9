package tamis.plugin.trials;

import java.util.List;
import tamis.engine.record.Described;

/** A stage with a window that was not read in every trial. */
public record Unread(
    @Described(value = "Stage of the formula", example = "syrup") String stage,
    @Described(value = "What its window is of", example = "temperature") String measure,
    @Described("Trials in which it was not read, by id") List<String> trials) {
  public Unread {
    trials = List.copyOf(trials);
  }
}
