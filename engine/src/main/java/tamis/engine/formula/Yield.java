package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** What a formula as written gives. */
public record Yield(
    @Described(value = "Portions", moreThan = "0", atMost = "1000000", example = "12")
        @Nullable Double portions,
    @Described(value = "Pieces", moreThan = "0", atMost = "1000000", example = "24")
        @Nullable Double pieces,
    @Described(value = "Raw mass of one piece", moreThan = "0 g", example = "400 g")
        @Nullable Mass pieceMass,
    @Described(value = "Lost up to make-up: bowl, bench, bag", example = "2 %")
        @Nullable Fraction makeUpLoss,
    @Described(value = "Lost after make-up: proof, bake, cool", example = "11 %")
        @Nullable Fraction bakeLoss,
    @Described(
            value = "Measured finished mass; replaces both losses",
            moreThan = "0 g",
            example = "1.9 kg")
        @Nullable Mass mass,
    @Described(value = "Pans it fills", optional = true, most = 100) List<PanCount> pans,
    @Described(value = "Density of the raw batter or dough", example = "0.45 g/ml")
        @Nullable Density batterDensity,
    @Described(value = "Density of the finished product", example = "0.55 g/ml")
        @Nullable Density density) {
  private static final Yield NOTHING_SAID =
      new Yield(null, null, null, null, null, null, List.of(), null, null);

  public Yield {
    if (mass != null && (makeUpLoss != null || bakeLoss != null)) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "/mass",
          "a measured mass replaces both losses; give the mass or the losses");
    }
    lossBelowOne(makeUpLoss, "/makeUpLoss");
    lossBelowOne(bakeLoss, "/bakeLoss");
  }

  /** A yield of which nothing is said: no losses. */
  public static Yield nothingSaid() {
    return NOTHING_SAID;
  }

  /** The part that is left after make-up. */
  public double afterMakeUp() {
    return makeUpLoss == null ? 1 : makeUpLoss.rest();
  }

  /** The part of the made-up mass that is left after baking. */
  public double afterBake() {
    return bakeLoss == null ? 1 : bakeLoss.rest();
  }

  private static void lossBelowOne(@Nullable Fraction loss, String pointer) {
    if (loss != null && loss.value() >= 1) {
      throw Refusal.of(FaultCode.OUT_OF_BOUNDS, pointer, "a loss must be less than 100 %");
    }
  }
}
