package tamis.plugin.balancing;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Described;

/** What a property of the mix may come to, or should. */
public record MixBound(
    @Described(
            value =
                "water, solids, sugar, fat, milk-solids-not-fat, sweetness, protein, alcohol, any"
                    + " figure of ingredient documents, or a name of one's own",
            example = "fat",
            most = 80)
        String property,
    @Described(value = "At least", atLeast = "0", atMost = "1e9", example = "8")
        @Nullable Double low,
    @Described(value = "At most", atLeast = "0", atMost = "1e9", example = "10")
        @Nullable Double high,
    @Described(value = "As near to this as it can be", atLeast = "0", atMost = "1e9", example = "9")
        @Nullable Double target,
    @Described(
            value = "How much a unit off this target counts beside those of others; 1 if left out",
            moreThan = "0",
            atMost = "1e6",
            example = "2")
        @Nullable Double weight,
    @Described("Whether the figures are of 100 g of the mix, as if left out, or of all of it")
        @Nullable Per per) {

  /** Of how much a figure is. */
  public enum Per {
    HUNDRED_GRAMS,
    WHOLE
  }

  public MixBound {
    Faults faults = new Faults();
    if (low == null && high == null && target == null) {
      faults.add(FaultCode.MISSING, "", "a bound needs low, high or target");
    }
    if (low != null && high != null && low > high) {
      faults.add(
          FaultCode.INCONSISTENT,
          "/low",
          "low is above high: " + Words.number(low) + ", " + Words.number(high));
    }
    boolean outside =
        target != null && ((low != null && target < low) || (high != null && target > high));
    if (outside) {
      faults.add(FaultCode.INCONSISTENT, "/target", "the target lies outside of its own bounds");
    }
    if (weight != null && target == null) {
      faults.add(FaultCode.MISSING, "/target", "a weight goes with a target");
    }
    faults.refuseIfAny();
  }

  boolean isWhole() {
    return per == Per.WHOLE;
  }
}
