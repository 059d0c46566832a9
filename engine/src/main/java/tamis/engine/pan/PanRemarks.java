package tamis.engine.pan;

import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;

/** What should be known about a capacity. */
final class PanRemarks {
  /** Printed capacities are rounded down by up to a sixth; more than this is another dish. */
  private static final double DOUBTFUL = 0.25;

  private PanRemarks() {}

  /** On a pan of the table. */
  static void ofStandard(StandardPan pan, double held, Notes notes, String place) {
    String id = pan.row().key();
    if (pan.differsByMaker()) {
      notes.estimate(
          "capacity-differs-by-maker",
          place,
          id + " holds " + ml(held) + " in one maker's list; the standard fixes the rim only");
    }
    @Nullable Double straight = pan.geometricMillilitres();
    if (straight != null && Math.abs(straight - held) > DOUBTFUL * held) {
      notes.estimate(
          "capacity-doubtful",
          place,
          id
              + " is published with "
              + ml(held)
              + " but its straight walls would hold "
              + ml(straight)
              + ": fill yours with water and give its `capacity`");
    }
  }

  /** On a ring of which only the outline is known. */
  static void ofStraightRing(double held, Notes notes, String place) {
    notes.remark(
        "ring-straight",
        place,
        "the ring is taken as straight-walled, "
            + ml(held)
            + "; with a half-round bottom it holds "
            + ml(held * PanGeometry.halfRoundPart())
            + ": give its `capacity`");
  }

  private static String ml(double millilitres) {
    return Math.round(millilitres) + " ml";
  }
}
