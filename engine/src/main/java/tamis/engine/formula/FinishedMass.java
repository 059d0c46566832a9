package tamis.engine.formula;

import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Weighing;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;

/** What a quantity of a formula comes to, in grams of the finished product. */
final class FinishedMass {
  private FinishedMass() {}

  /**
   * @throws Refusal with pointers relative to the quantity
   */
  static Spread of(Quantity quantity, Draft part, String name, Weighing weighing) {
    if (!quantity.isMeasured()) {
      throw refused(
          FaultCode.NO_SIZE, quantity, name, "`" + quantity.text() + "` is no amount by itself");
    }
    Unit unit = weighing.unit(quantity.unit());
    if (unit.dimension() == Dimension.MASS) {
      return of(quantity, Spread.exactly(unit.factor()));
    }
    Yield yield = part.formula().yieldOrNothing();
    if (unit.dimension() == Dimension.VOLUME) {
      if (yield.density() == null) {
        throw refused(
            FaultCode.NO_DENSITY,
            quantity,
            name,
            "`" + name + "` says no density of its yield, so a volume of it cannot be weighed");
      }
      double grams = unit.factor() * yield.density().gramsPerMillilitre();
      return of(quantity, Spread.exactly(grams));
    }
    if (unit.symbol().equals("batch") && !part.free()) {
      return of(quantity, part.finished());
    }
    throw refused(
        FaultCode.NO_PIECE_MASS,
        quantity,
        name,
        "a " + unit.symbol() + " of `" + name + "` has no mass");
  }

  private static Spread of(Quantity quantity, Spread perUnit) {
    return new Spread(
        perUnit.low() * quantity.low(),
        perUnit.typical() * quantity.amount(),
        perUnit.high() * quantity.high());
  }

  private static Refusal refused(FaultCode code, Quantity quantity, String name, String why) {
    String allowed = "a mass, batches, or a volume if the yield of `" + name + "` says its density";
    return new Refusal(new Fault(code, "", quantity.text(), allowed, why + "; give " + allowed));
  }
}
