package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.PanCount;
import tamis.engine.note.Notes;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;
import tamis.engine.quantity.Spread;

/** Pans that are filled together. */
final class PanSet {
  private final List<One> pans;
  private final boolean assumed;
  private final Fill fill;
  private final String place;
  private final String list;

  /**
   * One kind of pan.
   *
   * @param held one of them, to the rim
   * @param part that is filled
   */
  private record One(PanRef pan, int count, Spread held, double part) {
    double batter() {
      return held.typical() * part;
    }
  }

  private PanSet(List<One> pans, boolean assumed, Fill fill, String list, String place) {
    this.pans = pans;
    this.assumed = assumed;
    this.fill = fill;
    this.list = list;
    this.place = place;
  }

  /**
   * @param list name of the list in the result
   * @param place of the list in the input
   */
  static PanSet of(List<PanCount> given, Fill fill, String list, String place, Notes notes) {
    List<One> pans = new ArrayList<>();
    boolean assumed = false;
    for (PanCount pan : given) {
      String at = "/" + list + "/" + pans.size() + "/millilitres";
      String from = place.equals("/formula") ? place : place + "/" + pans.size() + "/pan";
      Spread held = Pans.standard().millilitres(pan.pan(), notes, from, at);
      assumed |= pan.fill() == null;
      double part = pan.fill() == null ? fill.part().typical() : pan.fill().value();
      pans.add(new One(pan.pan(), pan.number(), held, part));
    }
    return new PanSet(pans, assumed, fill, list, place);
  }

  double millilitres() {
    return pans.stream().mapToDouble(pan -> pan.held().typical() * pan.count()).sum();
  }

  private double batter() {
    return pans.stream().mapToDouble(pan -> pan.batter() * pan.count()).sum();
  }

  /** The factor from these other pans; low and high are those by capacity and by geometry. */
  Spread over(PanSet from) {
    double typical = batter() / from.batter();
    @Nullable Double into = geometricBatter();
    @Nullable Double made = from.geometricBatter();
    if (into == null || made == null) {
      return Spread.exactly(typical);
    }
    double exact = into / made;
    return new Spread(Math.min(typical, exact), typical, Math.max(typical, exact));
  }

  private @Nullable Double geometricBatter() {
    double sum = 0;
    for (One one : pans) {
      @Nullable Double geometric = Pans.standard().geometricMillilitres(one.pan());
      if (geometric == null) {
        return null;
      }
      sum += geometric * one.part() * one.count();
    }
    return sum;
  }

  @Nullable Double areaOver(PanSet from) {
    @Nullable Double into = area();
    @Nullable Double made = from.area();
    return into == null || made == null ? null : into / made;
  }

  private @Nullable Double area() {
    double sum = 0;
    for (One one : pans) {
      @Nullable Double area = Pans.standard().areaSquareCm(one.pan());
      if (area == null) {
        return null;
      }
      sum += area * one.count();
    }
    return sum;
  }

  void citeFill(Notes notes) {
    if (assumed) {
      for (int i = 0; i < pans.size(); i++) {
        fill.cite(notes, "/batter", "/" + list + "/" + i + "/batterMillilitres");
      }
    }
  }

  /** The depth that most of the batter stood at: the mean over the pans by their batter. */
  private @Nullable Double meanCm(boolean batter) {
    double sum = 0;
    double weight = 0;
    for (One one : pans) {
      @Nullable Double cm = batter ? depthCm(one) : Pans.standard().heightCm(one.pan());
      if (cm == null) {
        return null;
      }
      sum += cm * one.batter() * one.count();
      weight += one.batter() * one.count();
    }
    return sum / weight;
  }

  private static @Nullable Double depthCm(One one) {
    return Pans.standard().depthCm(one.pan(), one.part());
  }

  /**
   * One row a kind of pan.
   *
   * @param from the pans to compare with, or null
   * @param grams batter over all of these pans, or null
   */
  List<PanShare> shares(@Nullable PanSet from, @Nullable Double grams, Notes notes) {
    List<PanShare> shares = new ArrayList<>();
    @Nullable Double height = from == null ? null : from.meanCm(false);
    @Nullable Double depth = from == null ? null : from.meanCm(true);
    for (One one : pans) {
      String at = place + "/" + shares.size();
      @Nullable Double own = Pans.standard().heightCm(one.pan());
      @Nullable Double stands = depthCm(one);
      @Nullable Boolean keeps = null;
      if (height != null && own != null) {
        keeps = DepthRule.keeps(own - height);
        DepthRule.cite(notes, "/" + list + "/" + shares.size() + "/keepsDepth");
        if (!keeps) {
          DepthRule.outside(own - height, notes, at);
        }
      }
      if (depth != null && stands != null) {
        DepthRule.advise(depth, stands, notes, at);
      }
      shares.add(
          new PanShare(
              named(one.pan()),
              one.count(),
              one.held().typical(),
              one.batter(),
              grams == null ? null : grams * one.batter() / batter(),
              own,
              stands,
              depth == null || stands == null ? null : stands - depth,
              keeps));
    }
    return shares;
  }

  /** The id, or the shape of a pan that is described. */
  static String named(PanRef pan) {
    if (pan.id() != null) {
      return pan.id();
    }
    return Objects.requireNonNull(pan.object()).shape() == null
        ? "measured pan"
        : String.valueOf(pan.object().shape()).toLowerCase(Locale.ROOT);
  }
}
