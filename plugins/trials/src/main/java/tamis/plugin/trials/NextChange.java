package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** The one thing to do otherwise next time, with all else left as it is. */
public record NextChange(
    @Described("What to do") String change,
    @Described("What kind of step it is") Step step,
    @Described("Stage it belongs to; left out if to none") @Nullable String stage,
    @Described("What is measured there") @Nullable String measure,
    @Described("Ingredient, change or part that is meant") @Nullable String of,
    @Described("The window to come to") @Nullable MeasureWindow window,
    @Described("Why this one") String reason) {

  /** What kind of step it is. */
  public enum Step {
    /** Bring a measure back to its window, or to what is written. */
    BRING_BACK,
    /** Do as in the trials that were kept. */
    AS_KEPT,
    /** Read what was not read. */
    READ,
    /** Make it once more, the same way. */
    REPEAT
  }
}
