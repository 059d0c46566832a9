package tamis.engine.pan;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Length;
import tamis.engine.record.Described;

/**
 * A cake with cream between its layers, on top and around. What it takes is the outer solid less
 * the layers, not area times thickness; the ring where top and side meet counts with the side (8 in
 * × 4 in with a coat of ¼ in takes 6 % more than area times thickness).
 */
public record Coat(
    @Described("The bare cake") CakeShape cake,
    @Described(value = "Thickness on top", atLeast = "0 m", atMost = "1 m", example = "5 mm")
        Length top,
    @Described(value = "Thickness around", atLeast = "0 m", atMost = "1 m", example = "5 mm")
        Length side,
    @Described(
            value = "Thickness between two layers; nothing between unless told",
            atLeast = "0 m",
            atMost = "1 m",
            example = "6 mm")
        @Nullable Length between) {
  public Coat {
    boolean filled = between != null && between.metres() > 0 && cake.layerCount() > 1;
    if (top.metres() <= 0 && side.metres() <= 0 && !filled) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "nothing is coated: `top`, `side` or, with two layers or more, `between` must be more"
              + " than 0 cm");
    }
  }

  /** What it takes. */
  public CoatVolumes volumes() {
    double area = cake.topSquareCm();
    double gaps = (between == null ? 0 : between.centimetres()) * (cake.layerCount() - 1);
    double filled = cake.layerHeight().centimetres() * cake.layerCount() + gaps;
    return CoatVolumes.of(
        area * top.centimetres(),
        cake.rimSquareCm(side.centimetres()) * (filled + top.centimetres()),
        area * gaps);
  }
}
