package tamis.engine.pan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/**
 * A cake, or tiers of one, with cream between its layers, on top and around. What it takes is the
 * outer solid less the layers, not area times thickness; the ring where top and side meet counts
 * with the side (8 in × 4 in with a coat of ¼ in takes 6 % more than area times thickness). Each
 * tier is coated whole, also where the next one stands on it.
 */
@ExactlyOne({"cake", "tiers"})
public record Coat(
    @Described("The bare cake") @Nullable CakeShape cake,
    @Described(value = "Thickness on top", atLeast = "0 m", atMost = "1 m", example = "5 mm")
        Length top,
    @Described(value = "Thickness around", atLeast = "0 m", atMost = "1 m", example = "5 mm")
        Length side,
    @Described(
            value = "Thickness between two layers; nothing between unless told",
            atLeast = "0 m",
            atMost = "1 m",
            example = "6 mm")
        @Nullable Length between,
    @Described(value = "Bare cakes of a tiered cake, the lowest first", optional = true, most = 20)
        List<CakeShape> tiers,
    @Described(
            value = "Thin coat under the last one, on top and around, that holds the crumbs",
            atLeast = "0 m",
            atMost = "1 m",
            example = "2 mm")
        @Nullable Length crumb,
    @Described(value = "More for piping, as a part of all the rest", example = "10 %")
        @Nullable Fraction piping) {
  public Coat {
    Faults faults = new Faults();
    List<CakeShape> all = cake == null ? tiers : List.of(cake);
    boolean layered = all.stream().anyMatch(tier -> tier.layerCount() > 1);
    boolean filled = between != null && between.metres() > 0 && layered;
    if (top.metres() <= 0
        && side.metres() <= 0
        && !filled
        && (crumb == null || crumb.metres() <= 0)) {
      faults.add(
          FaultCode.INCONSISTENT,
          "",
          "nothing is coated: `top`, `side`, `crumb` or, with two layers or more, `between` must"
              + " be more than 0 cm");
    }
    double around = side.centimetres() + (crumb == null ? 0 : crumb.centimetres());
    for (CakeShape tier : all) {
      refuseThicker("top", top, top.centimetres(), tier.layersCm(), "the cake is high", faults);
      refuseThicker("side", side, around, tier.narrowestCm() / 2, "half its width", faults);
      if (between != null && tier.layerCount() > 1) {
        refuseThicker(
            "between",
            between,
            between.centimetres(),
            tier.layersCm(),
            "its layers are high",
            faults);
      }
    }
    refuseOverhang(tiers, faults);
    faults.refuseIfAny();
  }

  /** One cake without crumb coat or piping. */
  public Coat(CakeShape cake, Length top, Length side, @Nullable Length between) {
    this(cake, top, side, between, List.of(), null, null);
  }

  /** The cakes that are coated, the lowest first. */
  public List<CakeShape> cakes() {
    return cake == null ? tiers : List.of(cake);
  }

  /** What it takes, over all tiers. */
  public CoatVolumes volumes() {
    return volumes(1);
  }

  /** What it would take over all tiers if every coat were so many times as thick. */
  public CoatVolumes volumes(double times) {
    CoatVolumes all = CoatVolumes.of(0, 0, 0, 0, 0);
    for (CakeShape tier : cakes()) {
      all = all.plus(volumes(tier, times));
    }
    return all;
  }

  /** What one tier takes. */
  public CoatVolumes volumes(CakeShape tier) {
    return volumes(tier, 1);
  }

  private CoatVolumes volumes(CakeShape tier, double times) {
    double area = tier.topSquareCm();
    double first = crumb == null ? 0 : crumb.centimetres() * times;
    double last = top.centimetres() * times;
    double gap = between == null ? 0 : between.centimetres() * times;
    double gaps = gap * (tier.layerCount() - 1);
    double filled = tier.layersCm() + gaps;
    double crumbed = tier.rimSquareCm(first);
    double outer = tier.rimSquareCm(first + side.centimetres() * times);
    return CoatVolumes.of(
        (area + crumbed) * last,
        (outer - crumbed) * (filled + first + last) + tier.trimmedMillilitres(),
        area * gaps,
        crumbed * (filled + first) + area * first,
        piping == null ? 0 : piping.value());
  }

  private static void refuseThicker(
      String name, Length given, double centimetres, double most, String what, Faults faults) {
    if (centimetres > most * (1 + 1e-12)) {
      Length allowed = Length.ofCentimetres(most);
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              "/" + name,
              given.toString(),
              "at most " + allowed,
              "`"
                  + name
                  + "` is thicker than the cake allows: at most "
                  + allowed
                  + " ("
                  + what
                  + "), was "
                  + Length.ofCentimetres(centimetres)));
    }
  }

  private static void refuseOverhang(List<CakeShape> tiers, Faults faults) {
    for (int i = 1; i < tiers.size(); i++) {
      if (tiers.get(i).widestCm() > tiers.get(i - 1).widestCm()) {
        faults.add(
            FaultCode.INCONSISTENT,
            "/tiers/" + i,
            "tiers are told from the lowest: this one is wider than the one it stands on");
      }
    }
  }
}
