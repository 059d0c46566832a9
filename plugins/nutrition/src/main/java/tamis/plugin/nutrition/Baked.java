package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Contents;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.spi.Kitchen;

/**
 * A batch as it is eaten.
 *
 * @param contents what is in it
 * @param grams its finished mass
 */
record Baked(Contents contents, double grams) {

  /**
   * The batch of a formula. What is told here of 100 g or of a list does not depend on the size, so
   * a formula wholly in percent that is given none is made of 100 g of flour, and a remark says so.
   */
  static Batch batch(Kitchen kitchen, FormulaRef formula, @Nullable To to, Notes notes) {
    try {
      return kitchen.batch(formula, to);
    } catch (Refusal refusal) {
      boolean sizeless =
          to == null
              && refusal.faults().stream()
                  .allMatch(f -> f.code() == FaultCode.NO_SIZE && f.pointer().equals("/to"));
      if (!sizeless) {
        throw refusal;
      }
    }
    notes.remark(
        "size-assumed",
        "/to",
        "the formula is wholly in percent; figures of the batch are of 100 g of flour");
    return kitchen.batch(formula, To.ofFlour(Mass.ofGrams(100)));
  }

  /** A loss in a request stands in the place of the formula's own, so that none is taken twice. */
  static Baked of(Batch batch, @Nullable Fraction loss) {
    Contents contents = Contents.of(batch);
    double grams = loss == null ? contents.grams() : batch.root().madeUp().typical() * loss.rest();
    return new Baked(contents, grams);
  }

  /** What the oven took, in all parts. */
  double lostGrams() {
    return contents.mixedGrams() - grams;
  }
}
