package tamis.plugin.stages;

/**
 * Which figures are taken where sources differ.
 *
 * @param sugarFit whether syrups follow the fit of sugar technology rather than the parts of foods
 * @param fatHeat 0 for the least heat of melting published, 0.5 for the usual one, 1 for the most
 */
record HeatModel(boolean sugarFit, double fatHeat) {
  static final HeatModel USUAL = new HeatModel(true, 0.5);
}
