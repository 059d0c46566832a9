package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Cited;
import tamis.engine.quantity.Spread;

/**
 * A formula worked out as it is written, before it is made at a size.
 *
 * @param formula the document
 * @param lines its lines in grams
 * @param free whether it is wholly in percent and has no size of its own; then for 100 g of flour
 * @param flour total flour with that of joined parts, in grams
 * @param weighed all that is weighed in
 * @param mass what stays at mixing, after {@code remains}
 * @param expanded ingredient lines over all its parts
 */
record Draft(
    Formula formula,
    List<DraftLine> lines,
    boolean free,
    double flour,
    Spread weighed,
    Spread mass,
    long expanded) {

  /**
   * @param index of the line in the document
   * @param ingredient what it is, or null if it is a sub-formula
   * @param part the sub-formula worked out, or null
   * @param grams finished mass of a sub-formula
   * @param flour whether the ingredient counts as flour here
   * @param sources rows that the grams rest on
   */
  record DraftLine(
      int index,
      Line line,
      @Nullable Ingredient ingredient,
      @Nullable Draft part,
      Spread grams,
      boolean flour,
      List<Cited> sources) {

    DraftLine times(double factor) {
      return new DraftLine(index, line, ingredient, part, grams.times(factor), flour, sources);
    }
  }

  /** After make-up: the raw scaling weight. */
  Spread madeUp() {
    return mass.times(formula.yieldOrNothing().afterMakeUp());
  }

  /** After baking and cooling; a measured mass of the yield replaces both losses. */
  Spread finished() {
    Yield yield = formula.yieldOrNothing();
    return yield.mass() == null
        ? madeUp().times(yield.afterBake())
        : Spread.exactly(yield.mass().grams());
  }

  /** What one time the formula gives: finished, or raw after make-up. */
  double grams(boolean baked) {
    return (baked ? finished() : madeUp()).typical();
  }

  /** Flour in one gram of the finished formula. */
  double flourShare() {
    return flour / finished().typical();
  }
}
