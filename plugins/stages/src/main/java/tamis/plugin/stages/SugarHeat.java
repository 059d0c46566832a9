package tamis.plugin.stages;

/**
 * Specific heat of sugar solutions as sugar technology measures it, in kJ/(kg·K): 4.187 −
 * Bx·(0.0297 − 4.6e-5·purity) + 7.5e-5·Bx·t, purity 100. The composition of foods gives about a
 * fifth less for a thick syrup.
 */
final class SugarHeat {
  private static final double WATER = 4.187;
  private static final double PER_BRIX = 0.0297 - 4.6e-5 * 100;
  private static final double PER_BRIX_AND_KELVIN = 7.5e-5;

  private SugarHeat() {}

  static double specificHeat(double brix, double celsius) {
    return WATER - brix * PER_BRIX + PER_BRIX_AND_KELVIN * brix * celsius;
  }

  /** Heat above 0 °C in kJ/kg. */
  static double heatContent(double brix, double celsius) {
    return (WATER - brix * PER_BRIX + PER_BRIX_AND_KELVIN / 2 * brix * celsius) * celsius;
  }
}
