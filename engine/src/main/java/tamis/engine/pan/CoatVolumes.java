package tamis.engine.pan;

import tamis.engine.record.Described;

/** Volumes of cream that a coat takes, the cake not counted. */
public record CoatVolumes(
    @Described(value = "On top, over the bare or crumb-coated cake", unit = "ml") double top,
    @Described(
            value =
                "Around, with the ring where top and side meet and what inner layers leave free",
            unit = "ml")
        double side,
    @Described(value = "Between the layers", unit = "ml") double between,
    @Described(value = "Crumb coat, on top and around", unit = "ml") double crumb,
    @Described(value = "Allowance for piping", unit = "ml") double piping,
    @Described(value = "All of it", unit = "ml", headline = true) double total) {

  static CoatVolumes of(double top, double side, double between, double crumb, double piped) {
    double spread = top + side + between + crumb;
    return new CoatVolumes(top, side, between, crumb, spread * piped, spread * (1 + piped));
  }

  CoatVolumes plus(CoatVolumes other) {
    return new CoatVolumes(
        top + other.top,
        side + other.side,
        between + other.between,
        crumb + other.crumb,
        piping + other.piping,
        total + other.total);
  }
}
