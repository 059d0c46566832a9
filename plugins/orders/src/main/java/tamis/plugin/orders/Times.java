package tamis.plugin.orders;

import tamis.engine.formula.Formula;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.quantity.Mass;

/** So many times a formula; one wholly in percent counts 100 g of flour, as batches do. */
final class Times {
  private static final double FLOUR_GRAMS = 100;

  private Times() {}

  static To of(Formula formula, double times) {
    Yield yield = formula.yieldOrNothing();
    boolean percent = formula.lines().stream().anyMatch(line -> line.quantity().isPercent());
    boolean measured = formula.lines().stream().anyMatch(line -> line.quantity().isMeasured());
    boolean sized = yield.pieces() != null && yield.pieceMass() != null;
    return percent && !measured && !sized
        ? To.ofFlour(Mass.ofGrams(FLOUR_GRAMS * times))
        : To.ofFactor(times);
  }
}
