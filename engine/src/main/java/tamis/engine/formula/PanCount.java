package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.pan.PanRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** So many of one pan. */
public record PanCount(
    @Described(
            value = "Id in the table of pans, or shape with dimensions",
            example = "round-8x2-in")
        PanRef pan,
    @Described(value = "How many", atLeast = "1", atMost = "10000", example = "2")
        @Nullable Integer count,
    @Described(value = "Part of the volume that is filled", moreThan = "0", example = "0.6")
        @Nullable Fraction fill,
    @Described(value = "Mass that goes into one pan", moreThan = "0 g", example = "650 g")
        @Nullable Mass mass) {
  public PanCount {
    if (fill != null && mass != null) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "/fill",
          "the mass for one pan says how full it is; give `mass` or `fill`");
    }
  }

  /** How many; one unless said otherwise. */
  public int number() {
    return count == null ? 1 : count;
  }
}
