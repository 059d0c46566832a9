package tamis.plugin.pans;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Mass;
import tamis.engine.spi.Kitchen;

/**
 * What a cream weighs: by its density as it is spread, by the overrun to which its mix is whipped,
 * or by the density that its formula states.
 */
record Cream(
    @Nullable Density density,
    @Nullable Double overrunPercent,
    @Nullable Density mixDensity,
    @Nullable FormulaRef formula) {

  /** Faults of how it is told. */
  void check(Faults faults) {
    if (density != null && overrunPercent != null) {
      faults.add(
          FaultCode.EXACTLY_ONE,
          "/overrunPercent",
          "give the `density` of the cream as it is spread, or its overrun with `mixDensity`");
    }
    if ((overrunPercent == null) != (mixDensity == null)) {
      faults.add(
          FaultCode.MISSING,
          overrunPercent == null ? "/overrunPercent" : "/mixDensity",
          "`overrunPercent` and `mixDensity` tell a density together: mix ÷ (1 + overrun)");
    }
  }

  /** Grams a millilitre, or null if nothing was told that gives it. */
  @Nullable Double gramsPerMillilitre(Kitchen kitchen) {
    if (density != null) {
      return density.gramsPerMillilitre();
    }
    if (overrunPercent != null && mixDensity != null) {
      return mixDensity.gramsPerMillilitre() / (1 + overrunPercent / 100);
    }
    if (formula == null) {
      return null;
    }
    @Nullable Density stated = kitchen.formula(formula).yieldOrNothing().density();
    if (stated == null) {
      throw Refusal.of(
          FaultCode.NO_DENSITY,
          "/formula",
          "the formula does not state the density of what it gives; give `density`, or"
              + " `overrunPercent` with `mixDensity`");
    }
    return stated.gramsPerMillilitre();
  }

  /** How many times the formula gives so many finished grams; null without a formula. */
  @Nullable Double factor(double grams, Kitchen kitchen, Notes notes) {
    if (formula == null || grams <= 0) {
      return null;
    }
    Batch batch = kitchen.batch(formula, To.ofMass(Mass.ofGrams(grams)));
    batch.remarks().forEach(notes::add);
    return batch.factor() * grams / batch.root().finished().typical();
  }
}
