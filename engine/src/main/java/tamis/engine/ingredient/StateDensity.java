package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Described;

/** What a millilitre of an ingredient weighs in one state. */
public record StateDensity(
    @Described(
            value = "How it was filled: as-measured, sifted, packed, melted …",
            example = "sifted",
            most = 60)
        String state,
    @Described(
            value = "The measure it was weighed with, if the source says so",
            example = "cup",
            most = 40)
        @Nullable String measure,
    @Described(value = "Lightest to expect", example = "0.38 g/ml") Density low,
    @Described(value = "What to work with", example = "0.42 g/ml") Density typical,
    @Described(value = "Heaviest to expect", example = "0.46 g/ml") Density high,
    @Described(
            value = "Where it was published or how it was found",
            most = 400,
            example = "weighed here, ten cups")
        String source) {
  /** The state of a food that was just filled in. */
  public static final String AS_MEASURED = "as-measured";

  public StateDensity {
    if (low.compareTo(typical) > 0 || typical.compareTo(high) > 0) {
      throw Refusal.of(
          FaultCode.INCONSISTENT, "low, typical and high of a density must not run backwards");
    }
  }

  /** Grams in a millilitre. */
  public Spread spread() {
    return new Spread(
        low.gramsPerMillilitre(), typical.gramsPerMillilitre(), high.gramsPerMillilitre());
  }
}
