package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;
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
    @Described(value = "Mass of one such measure, as the source prints it", example = "125 g")
        @Nullable Mass measured,
    @Described(
            value = "Where it was published or how it was found",
            most = 400,
            example = "weighed here, ten cups")
        String source) {
  /** The state of a food that was just filled in. */
  public static final String AS_MEASURED = "as-measured";

  public StateDensity {
    if (measured != null && measure == null) {
      throw Refusal.of(
          FaultCode.MISSING, "/measure", "`measured` says what one measure weighs; say which");
    }
    if (low.compareTo(typical) > 0 || typical.compareTo(high) > 0) {
      throw Refusal.of(
          FaultCode.INCONSISTENT, "low, typical and high of a density must not run backwards");
    }
  }

  /**
   * Grams of one unit of volume; of the measure that the source weighed, exactly what it prints.
   */
  Spread of(Unit unit) {
    Spread spread = spread().times(unit.factor());
    if (measured == null || measure == null || !unit.symbol().equals(measure)) {
      return spread;
    }
    double grams = measured.grams();
    boolean same = unit.factor() == Units.standard().unit(measure, Measures.US).factor();
    return same && grams >= spread.low() && grams <= spread.high()
        ? new Spread(spread.low(), grams, spread.high())
        : spread;
  }

  /** Grams in a millilitre. */
  public Spread spread() {
    return new Spread(
        low.gramsPerMillilitre(), typical.gramsPerMillilitre(), high.gramsPerMillilitre());
  }
}
