package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pans;

/**
 * Sizes a batch by the pans it is to fill: by the mass that is stated for a pan, else by volume in
 * proportion to the pans that the formula says it fills, else by fill and density of the batter.
 */
final class PanSizing {
  private final Draft draft;
  private final Yield yield;
  private final boolean inline;
  private final Notes notes;

  PanSizing(Draft draft, boolean inline, Notes notes) {
    this.draft = draft;
    this.yield = draft.formula().yieldOrNothing();
    this.inline = inline;
    this.notes = notes;
  }

  double factor(To to) {
    Faults faults = new Faults();
    double factor = 0;
    for (int i = 0; i < to.pans().size(); i++) {
      PanCount pan = to.pans().get(i);
      String at = "/to/pans/" + i;
      @Nullable Double one = faults.gather(at, () -> one(pan, at, to.isBaked()));
      factor += one == null ? 0 : one * pan.number();
    }
    faults.refuseIfAny();
    return factor;
  }

  private double one(PanCount pan, String at, boolean baked) {
    if (pan.mass() != null) {
      return pan.mass().grams() / draft.grams(baked);
    }
    if (!yield.pans().isEmpty() && !draft.free()) {
      if (pan.fill() != null) {
        notes.remark(
            "fill-not-used",
            at + "/fill",
            "the formula says which pans it fills, so the batch follows their volume, not the fill");
      }
      return volume(pan, at + "/pan") / written();
    }
    if (pan.fill() != null && yield.batterDensity() != null) {
      double density = yield.batterDensity().gramsPerMillilitre();
      return volume(pan, at + "/pan") * pan.fill().value() * density / draft.grams(false);
    }
    throw Refusal.of(
        FaultCode.NO_SIZE,
        "",
        "`"
            + draft.formula().name()
            + "` cannot be sized by this pan: give the mass for one pan, or say in `yield.pans`"
            + " which pans the formula fills, or give `fill` together with `yield.batterDensity`");
  }

  /** What the pans hold that the formula as written fills. */
  private double written() {
    List<PanCount> pans = yield.pans();
    double volume = 0;
    for (int i = 0; i < pans.size(); i++) {
      String at = inline ? "/formula/yield/pans/" + i + "/pan" : "/formula";
      volume += volume(pans.get(i), at) * pans.get(i).number();
    }
    return volume;
  }

  private double volume(PanCount pan, String at) {
    return Pans.standard().millilitres(pan.pan(), notes, at, "/factor").typical();
  }
}
