package tamis.plugin.scaling;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** How figures are rounded to what can be weighed. */
public record Rounding(
    @Described(
            value = "One step for all lines; left out, the step grows with the mass",
            moreThan = "0 g",
            example = "5 g")
        @Nullable Mass step,
    @Described("Make the batch a little larger or smaller, so that whole eggs are used")
        @Nullable Boolean wholeEggs) {

  /** The usual steps and no change for eggs. */
  static Rounding usual() {
    return new Rounding(null, null);
  }

  boolean wantsWholeEggs() {
    return Boolean.TRUE.equals(wholeEggs);
  }
}
