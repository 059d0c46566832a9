package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Spread;
import tamis.engine.thermal.ThermalProperties;

/**
 * The heat that a kilogram holds at a temperature, over that at 0 °C with all melted: what warms
 * its parts, what melts its milk fat and cocoa butter, and what melts its ice.
 */
final class HeatContent {
  /** What a mole of anything dissolved in a kilogram of water lowers its freezing by, in K. */
  private static final double CRYOSCOPIC = 1.86;

  /** Milk, egg, fruit and dough begin to freeze half a degree below water. */
  private static final double FOOD_FREEZES = -0.5;

  private static final double PURE_WATER = 99;
  private static final double PURE_WATER_FREEZES = -0.002;

  private final Makeup made;
  private final HeatModel model;
  private final double freezes;

  HeatContent(Makeup made, HeatModel model) {
    this.made = made;
    this.model = model;
    this.freezes = freezes(made);
  }

  /** kJ/kg. */
  double at(double celsius) {
    return warmth(celsius) - frozen(celsius) - set(celsius);
  }

  /** kJ/(kg·K), with what melts on the way. */
  double slope(double celsius) {
    double step = 0.05;
    return (at(celsius + step) - at(celsius - step)) / (2 * step);
  }

  private double warmth(double celsius) {
    return made.syrup() && model.sugarFit()
        ? SugarHeat.heatContent(made.brix(), celsius)
        : ThermalProperties.heatContent(made.proximates(), celsius);
  }

  private double frozen(double celsius) {
    if (celsius >= freezes) {
      return 0;
    }
    double ice = made.waterPercent() / 100 * (1 - freezes / celsius);
    return ice * ThermalProperties.heatOfFreezing(celsius);
  }

  private double set(double celsius) {
    double fat = made.fatPercent() / 100;
    return fat
        * (made.milkFat() * set(SolidFat.of(FatKind.MILK), celsius)
            + made.cocoaFat() * set(SolidFat.of(FatKind.COCOA), celsius));
  }

  private double set(@Nullable SolidFat fat, double celsius) {
    if (fat == null) {
      return 0;
    }
    Spread heat = fat.heat();
    double taken = heat.low() + model.fatHeat() * (heat.high() - heat.low());
    return taken * fat.percent(celsius) / 100;
  }

  private static double freezes(Makeup made) {
    if (made.waterPercent() >= PURE_WATER) {
      return PURE_WATER_FREEZES;
    }
    if (!made.syrup() || made.waterPercent() == 0) {
      return FOOD_FREEZES;
    }
    double molality = made.brix() / Solutes.SUCROSE_GRAMS_PER_MOLE / made.waterPercent() * 1000;
    return Math.min(FOOD_FREEZES, -CRYOSCOPIC * molality);
  }
}
