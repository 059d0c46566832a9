package tamis.plugin.pans;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.PanCount;
import tamis.engine.note.Notes;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;

/**
 * One kind of tin on the shelf.
 *
 * @param place in the shelf's list
 * @param holds one of them to the rim, in millilitres
 * @param most the part to which it is filled at most
 */
record Tin(PanRef pan, int place, int available, double holds, double most) {
  private static final int HALVINGS = 50;
  private static final double NEVER = 2;

  static Tin of(PanCount pan, int place, Fill fill) {
    double part = pan.fill() == null ? fill.part().typical() : pan.fill().value();
    double holds = Pans.standard().millilitres(pan.pan()).typical();
    return new Tin(pan.pan(), place, pan.number(), holds, part);
  }

  /** What one takes at most. */
  double room() {
    return holds * most;
  }

  /** For the search; with a depth, how full it may be so that the depth is kept. */
  TinSearch.Kind kind(@Nullable Double wantedCm) {
    if (wantedCm == null || depthCm(1) == null) {
      return new TinSearch.Kind(room(), available, 0, 1);
    }
    double low = shareAt(wantedCm - DepthRule.mostCm());
    double high = shareAt(wantedCm + DepthRule.mostCm());
    return new TinSearch.Kind(room(), available, low, high);
  }

  TinChoice.Chosen chosen(int count, double share, @Nullable Double gramsPerMillilitre) {
    double batter = room() * share;
    return new TinChoice.Chosen(
        PanSet.named(pan),
        place,
        count,
        holds,
        batter,
        gramsPerMillilitre == null ? null : batter * gramsPerMillilitre,
        most * share,
        depthCm(share));
  }

  void judge(double share, Fill fill, Notes notes) {
    if (depthCm(share) == null) {
      notes.remark(
          "depth-unknown",
          "/shelf/" + place,
          "how deep the batter stands in this tin is not known; give its dimensions");
    }
    double low = fill.row() == null ? most / 2 : fill.part().low();
    if (most * share < low * (1 - TinSearch.HAIR)) {
      notes.remark(
          "too-shallow",
          "/shelf/" + place,
          String.format(
              Locale.ROOT,
              "only %.0f %% of this tin is filled: a shallow cake that dries sooner",
              most * share * 100));
    }
  }

  private @Nullable Double depthCm(double share) {
    return Pans.standard().depthCm(pan, most * share);
  }

  /** The share of its room at which the batter stands so high; above 1 if it never does. */
  private double shareAt(double centimetres) {
    if (centimetres <= 0) {
      return 0;
    }
    @Nullable Double full = depthCm(1);
    if (full == null) {
      return 0;
    }
    if (full < centimetres) {
      return NEVER;
    }
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      @Nullable Double depth = depthCm(middle);
      if (depth != null && depth < centimetres) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }
}
