package tamis.engine.pan;

import tamis.engine.record.Described;

/** Volumes of cream that a coat takes, the cake not counted. */
public record CoatVolumes(
    @Described(value = "On top, over the bare cake", unit = "ml") double top,
    @Described(value = "Around, with the ring where top and side meet", unit = "ml") double side,
    @Described(value = "Between the layers", unit = "ml") double between,
    @Described(value = "All of it", unit = "ml") double total) {

  static CoatVolumes of(double top, double side, double between) {
    return new CoatVolumes(top, side, between, top + side + between);
  }
}
