package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pans;

/** Finds the factor that a target asks for. */
final class Sizing {
  private final Larder larder;
  private final Draft draft;
  private final Notes notes;

  /** The factor, and what on hand ends it. */
  record Size(double factor, @Nullable String limitedBy) {}

  Sizing(Larder larder, Draft draft, Notes notes) {
    this.larder = larder;
    this.draft = draft;
    this.notes = notes;
  }

  Size size(@Nullable To to) {
    if (to == null) {
      if (draft.free()) {
        throw noSize(
            "", "is wholly in percent and has no size of its own; say in `to` how much to make");
      }
      return new Size(1, null);
    }
    if (!to.stock().isEmpty()) {
      return new StockSizing(larder, draft, notes).size(to.stock());
    }
    double factor = factor(to);
    if (!(factor > 0 && factor <= 1e12)) {
      throw Refusal.of(
          FaultCode.OUT_OF_BOUNDS,
          "/to",
          "this asks for " + factor + " times the formula; more than 0 and at most 1e12 is made");
    }
    return new Size(factor, null);
  }

  private double factor(To to) {
    Yield yield = draft.formula().yieldOrNothing();
    if (to.factor() != null) {
      return refuseFree("/to/factor", "a factor") * to.factor();
    }
    if (to.mass() != null) {
      return to.mass().grams() / perFactor(to);
    }
    if (to.portions() != null) {
      refuseFree("/to/portions", "portions");
      if (yield.portions() == null) {
        throw noSize("/to/portions", "does not say how many portions it gives");
      }
      return to.portions() / yield.portions();
    }
    if (to.pieces() != null && to.pieceMass() != null) {
      return to.pieces() * to.pieceMass().grams() / perFactor(to);
    }
    if (to.flour() != null) {
      if (draft.flour() <= 0) {
        throw Refusal.of(
            FaultCode.NO_FLOUR,
            "/to/flour",
            "`" + draft.formula().name() + "` has no flour to size it by");
      }
      return to.flour().grams() / draft.flour();
    }
    if (to.line() != null) {
      return new LineSizing(larder, draft, notes).factor(to.line());
    }
    return pans(to.pans(), yield);
  }

  /** Grams, raw after make-up or finished, that the formula as written gives. */
  private double perFactor(To to) {
    return to.isBaked() ? draft.finished().typical() : draft.madeUp().typical();
  }

  private double refuseFree(String pointer, String what) {
    if (draft.free()) {
      throw noSize(
          pointer,
          "is wholly in percent and has no size that "
              + what
              + " could multiply; give a mass, flour or pieces");
    }
    return 1;
  }

  private double pans(List<PanCount> pans, Yield yield) {
    Faults faults = new Faults();
    double factor = 0;
    for (int i = 0; i < pans.size(); i++) {
      PanCount pan = pans.get(i);
      String at = "/to/pans/" + i;
      @Nullable Double one = faults.gather(at, () -> onePan(pan, yield, at));
      factor += one == null ? 0 : one * pan.number();
    }
    faults.refuseIfAny();
    return factor;
  }

  /** By the mass that is stated, else by volume in proportion, else by fill and density. */
  private double onePan(PanCount pan, Yield yield, String at) {
    if (pan.mass() != null) {
      return pan.mass().grams() / draft.madeUp().typical();
    }
    double volume = Pans.standard().millilitres(pan.pan()).typical();
    if (!yield.pans().isEmpty() && !draft.free()) {
      if (pan.fill() != null) {
        notes.remark(
            "fill-not-used",
            at + "/fill",
            "the formula says which pans it fills, so the batch follows their volume, not the fill");
      }
      double own =
          yield.pans().stream()
              .mapToDouble(p -> Pans.standard().millilitres(p.pan()).typical() * p.number())
              .sum();
      return volume / own;
    }
    if (pan.fill() != null && yield.batterDensity() != null) {
      double grams = volume * pan.fill().value() * yield.batterDensity().gramsPerMillilitre();
      return grams / draft.madeUp().typical();
    }
    throw noSize(
        "",
        "cannot be sized by this pan: give the mass for one pan, or say in `yield.pans` which pans the formula fills, or give `fill` together with `yield.batterDensity`");
  }

  private Refusal noSize(String pointer, String why) {
    return Refusal.of(
        FaultCode.NO_SIZE,
        pointer.isEmpty() ? "" : pointer,
        "`" + draft.formula().name() + "` " + why);
  }
}
