package tamis.plugin.pans;

import org.jspecify.annotations.Nullable;
import tamis.engine.pan.CakeShape;
import tamis.engine.pan.Coat;
import tamis.engine.quantity.Length;
import tamis.engine.record.Described;

/** One coated cake, as it is cut through the middle. */
public record CoatedTier(
    @Described("Shape seen from above") CakeShape.Shape shape,
    @Described(value = "Bare, its longer side or diameter", unit = "cm") double widthCm,
    @Described(value = "Bare, its shorter side or diameter", unit = "cm") double narrowestCm,
    @Described("Layers") int layers,
    @Described(value = "One layer as it is stacked", unit = "cm") double layerCm,
    @Described(value = "Trimmed all around off inner layers", unit = "cm") double innerTrimCm,
    @Described(value = "Coat on top", unit = "cm") double topCm,
    @Described(value = "Coat around", unit = "cm") double sideCm,
    @Described(value = "Between two layers", unit = "cm") double betweenCm,
    @Described(value = "Crumb coat", unit = "cm") double crumbCm,
    @Described(value = "Coated, its longer side or diameter", unit = "cm") double finishedWidthCm,
    @Described(value = "Coated", unit = "cm") double finishedHeightCm,
    @Described(value = "Cream on this tier", unit = "ml") double millilitres) {

  static CoatedTier of(CakeShape cake, Coat coat) {
    double between = cm(coat.between());
    double crumb = cm(coat.crumb());
    double top = cm(coat.top());
    double side = cm(coat.side());
    return new CoatedTier(
        cake.shape(),
        cake.widestCm(),
        cake.narrowestCm(),
        cake.layerCount(),
        cake.layerCm(),
        cm(cake.innerTrim()),
        top,
        side,
        between,
        crumb,
        cake.widestCm() + 2 * (side + crumb),
        cake.layersCm() + between * (cake.layerCount() - 1) + crumb + top,
        coat.volumes(cake).total());
  }

  private static double cm(@Nullable Length length) {
    return length == null ? 0 : length.centimetres();
  }
}
