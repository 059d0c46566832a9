package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Contents;
import tamis.engine.quantity.Fraction;

/**
 * A batch as it is eaten.
 *
 * @param contents what is in it
 * @param grams its finished mass
 */
record Baked(Contents contents, double grams) {

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
