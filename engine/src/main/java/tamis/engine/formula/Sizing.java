package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.pan.Coat;

/** Finds the factor that a target asks for. */
final class Sizing {
  private final Larder larder;
  private final Draft draft;
  private final boolean inline;
  private final Notes notes;

  /** The factor, and what on hand ends it. */
  record Size(double factor, @Nullable String limitedBy) {}

  /**
   * @param inline whether the document stands in the input, so that remarks can point into it
   */
  Sizing(Larder larder, Draft draft, boolean inline, Notes notes) {
    this.larder = larder;
    this.draft = draft;
    this.inline = inline;
    this.notes = notes;
  }

  Size size(@Nullable To to) {
    if (to == null) {
      if (draft.free()) {
        throw noSize(
            FaultCode.NO_SIZE,
            "/to",
            "is wholly in percent and has no size of its own; say in `to` how much to make");
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
      refuseFree("/to/factor", "a factor");
      return to.factor();
    }
    if (to.mass() != null) {
      return to.mass().grams() / draft.grams(to.isBaked());
    }
    if (to.portions() != null) {
      refuseFree("/to/portions", "portions");
      if (yield.portions() == null) {
        throw noSize(FaultCode.NO_SIZE, "/to/portions", "does not say how many portions it gives");
      }
      return to.portions() / yield.portions();
    }
    if (to.pieces() != null && to.pieceMass() != null) {
      return to.pieces() * to.pieceMass().grams() / draft.grams(to.isBaked());
    }
    if (to.flour() != null) {
      if (draft.flour() <= 0) {
        throw noSize(FaultCode.NO_FLOUR, "/to/flour", "has no flour to size it by");
      }
      return to.flour().grams() / draft.flour();
    }
    if (to.line() != null) {
      return new LineSizing(larder, draft, notes).factor(to.line());
    }
    if (to.coat() != null) {
      return coat(to.coat(), yield);
    }
    return new PanSizing(draft, inline, notes).factor(to);
  }

  private void refuseFree(String pointer, String what) {
    if (draft.free()) {
      throw noSize(
          FaultCode.NO_SIZE,
          pointer,
          "is wholly in percent and has no size that "
              + what
              + " could multiply; give a mass, flour or pieces");
    }
  }

  /** By the volume of the coat and the density of the finished product. */
  private double coat(Coat coat, Yield yield) {
    if (yield.density() == null) {
      throw noSize(
          FaultCode.NO_DENSITY,
          "/to/coat",
          "says no density of its yield, so a coat of it cannot be weighed; give `yield.density`");
    }
    double grams = coat.volumes().total() * yield.density().gramsPerMillilitre();
    return grams / draft.finished().typical();
  }

  private Refusal noSize(FaultCode code, String pointer, String why) {
    return Refusal.of(code, pointer, "`" + draft.formula().name() + "` " + why);
  }
}
