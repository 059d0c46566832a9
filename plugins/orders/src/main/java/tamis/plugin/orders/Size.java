package tamis.plugin.orders;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.quantity.Mass;
import tamis.engine.spi.Kitchen;

/**
 * The size of one ordered thing, in one of the three ways in which a shop sells.
 *
 * @param portions so many portions
 * @param pieces so many pieces
 * @param pieceMass raw mass of one, where it is not that of the formula
 * @param pans what it is baked in
 */
record Size(
    @Nullable Double portions,
    @Nullable Double pieces,
    @Nullable Mass pieceMass,
    List<PanCount> pans) {

  /**
   * The batch for one of this size.
   *
   * @throws Refusal with pointers at {@code /portions}, {@code /pieces}, {@code /pans}, or at
   *     {@code /formula}
   */
  Batch batch(FormulaRef formula, Kitchen kitchen) {
    try {
      return kitchen.batch(formula, to(kitchen.formula(formula)));
    } catch (Refusal refusal) {
      throw new Refusal(refusal.faults().stream().map(this::placed).toList());
    }
  }

  /** Times the formula as written, where the yield alone tells; null where a batch must. */
  @Nullable Double times(Formula formula) {
    Yield yield = formula.yieldOrNothing();
    if (portions != null && yield.portions() != null) {
      return portions / yield.portions();
    }
    return pieces != null && pieceMass == null && yield.pieces() != null
        ? (Double) (pieces / yield.pieces())
        : null;
  }

  private To to(Formula formula) {
    @Nullable Double factor = null;
    @Nullable Mass one = pieceMass;
    Yield yield = formula.yieldOrNothing();
    if (pieces != null && one == null) {
      if (yield.pieces() != null) {
        factor = pieces / yield.pieces();
      } else if (yield.pieceMass() != null) {
        one = yield.pieceMass();
      } else {
        throw new Refusal(
            new Fault(
                FaultCode.NO_SIZE,
                "/to/pieces",
                pieces.toString(),
                "portions, pans, or pieces with their `pieceMass`",
                "`" + formula.name() + "` does not say how many pieces it gives"));
      }
    }
    return new To(
        factor,
        null,
        portions,
        factor == null ? pieces : null,
        one,
        null,
        pans,
        null,
        null,
        List.of(),
        null);
  }

  /** A fault of {@code /to/portions} is one of the order's own {@code /portions}. */
  private Fault placed(Fault fault) {
    if (!fault.pointer().startsWith("/to")) {
      return fault;
    }
    String rest = fault.pointer().substring("/to".length());
    String way = portions != null ? "/portions" : pieces != null ? "/pieces" : "/pans";
    return new Fault(
        fault.code(),
        rest.isEmpty() || rest.equals("/factor") ? way : rest,
        fault.given(),
        fault.allowed(),
        fault.message());
  }

  /** In words: {@code 12 portions}. */
  String words() {
    if (portions != null) {
      return Bounds.plain(portions) + " portions";
    }
    if (pieces != null) {
      return Bounds.plain(pieces) + " pieces" + (pieceMass == null ? "" : " of " + pieceMass);
    }
    return pans.stream().mapToInt(PanCount::number).sum() + " pans";
  }
}
