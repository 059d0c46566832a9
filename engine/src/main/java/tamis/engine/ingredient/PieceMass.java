package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Described;

/** What one piece of an ingredient weighs. */
public record PieceMass(
    @Described(value = "The piece: each, stick, leaf, slice …", example = "leaf", most = 40)
        String piece,
    @Described(value = "Size or state, if it matters", example = "large", most = 60)
        @Nullable String state,
    @Described(value = "Lightest to expect", example = "1.7 g") Mass low,
    @Described(value = "What to work with", example = "2 g") Mass typical,
    @Described(value = "Heaviest to expect", example = "3.3 g") Mass high,
    @Described(
            value = "Where it was published or how it was found",
            most = 400,
            example = "weighed here")
        String source) {
  /** The piece that is counted when nothing else is said. */
  public static final String EACH = "each";

  public PieceMass {
    if (low.compareTo(typical) > 0 || typical.compareTo(high) > 0) {
      throw Refusal.of(
          FaultCode.INCONSISTENT, "low, typical and high of a piece must not run backwards");
    }
  }

  /** Grams of one piece. */
  public Spread spread() {
    return new Spread(low.grams(), typical.grams(), high.grams());
  }
}
