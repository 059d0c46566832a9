package tamis.plugin.pans;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.pan.CakeShape;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;

/** Cakes as a bakery coats them. */
final class CoatingExamples {
  private CoatingExamples() {}

  static List<Coating.Input> all() {
    CakeShape low = layered(28, 3, 30.0);
    CakeShape high = layered(18, 3, null);
    return List.of(
        input(layered(20, 3, null), List.of(), null, null, null, null),
        input(
            layered(20, 3, null),
            List.of(),
            "2 mm",
            Fraction.parse("10 %"),
            Density.parse("0.55 g/ml"),
            Mass.ofGrams(1500)),
        input(null, List.of(low, high), "2 mm", null, Density.parse("0.55 g/ml"), null));
  }

  private static CakeShape layered(double diameter, int layers, @Nullable Double trimMillimetres) {
    return new CakeShape(
        CakeShape.Shape.ROUND,
        Length.ofCentimetres(diameter),
        null,
        null,
        null,
        layers,
        Length.ofCentimetres(3),
        Length.ofCentimetres(0.5),
        trimMillimetres == null ? null : Length.ofCentimetres(trimMillimetres / 10));
  }

  private static Coating.Input input(
      @Nullable CakeShape cake,
      List<CakeShape> tiers,
      @Nullable String crumb,
      @Nullable Fraction piping,
      @Nullable Density density,
      @Nullable Mass cream) {
    return new Coating.Input(
        cake,
        tiers,
        Length.parse("6 mm"),
        Length.parse("6 mm"),
        Length.parse("5 mm"),
        crumb == null ? null : Length.parse(crumb),
        piping,
        density,
        null,
        null,
        null,
        cream);
  }
}
