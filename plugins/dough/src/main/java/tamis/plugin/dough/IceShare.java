package tamis.plugin.dough;

import java.util.Locale;
import tamis.engine.note.Notes;
import tamis.engine.quantity.ScaleStep;

/**
 * How much of the water is weighed as ice. What the tap's share gives off while it cools, the ice
 * takes up while it warms to 0 °C, melts and warms to the same temperature. The ice replaces water,
 * so all of it together is the water of the formula. The textbook's 80 in the divisor is the latent
 * heat over the heat capacity, 79.7, rounded.
 */
final class IceShare {
  private IceShare() {}

  /**
   * Grams of ice.
   *
   * @param water temperature that tap water and ice must have together, in °C
   */
  static double of(DoughTemperature.Input input, double water, Notes notes) {
    double tap = input.tapTemperature() == null ? 0 : input.tapTemperature().celsius();
    double mass = input.waterMass().grams();
    if (water >= tap) {
      warm(water, tap, notes);
      return 0;
    }
    double capacity = DoughConstants.cited("heat-capacity-of-water", notes, "/iceGrams");
    double melting = DoughConstants.cited("latent-heat-of-ice", notes, "/iceGrams") / capacity;
    double ice = mass * (tap - water) / (tap + melting + warmingOfIce(input, capacity, notes));
    if (ice > mass) {
      throw DoughTemperature.impossible(
          input,
          "even if all the water were ice the dough would come out too warm: of "
              + ScaleStep.shown(mass)
              + " of water "
              + ScaleStep.shown(ice)
              + " would have to be ice; cool the flour");
    }
    remark(input, water, mass * (tap - water) / (tap + eighty()), notes);
    return ice;
  }

  private static double warmingOfIce(DoughTemperature.Input input, double capacity, Notes notes) {
    if (input.iceTemperature() == null || input.iceTemperature().celsius() == 0) {
      return 0;
    }
    double ofIce = DoughConstants.cited("heat-capacity-of-ice", notes, "/iceGrams");
    return -input.iceTemperature().celsius() * ofIce / capacity;
  }

  private static double eighty() {
    return DoughConstants.value("textbook-ice-divisor");
  }

  private static void warm(double water, double tap, Notes notes) {
    if (water > tap) {
      notes.remark(
          "warm-the-water",
          "/tapTemperature",
          "no ice: the water from the tap is warmed by "
              + Thermometer.difference(water - tap)
              + " to "
              + Thermometer.exact(water));
    }
  }

  private static void remark(
      DoughTemperature.Input input, double water, double textbook, Notes notes) {
    if (input.iceTemperature() == null) {
      notes.remark(
          "ice-melting",
          "/tapTemperature",
          String.format(
              Locale.ROOT,
              "the ice is taken as melting, at 0 °C, by its energy balance; with the textbook's rounded 80 it is %s; give `iceTemperature` for ice from a freezer",
              ScaleStep.shown(textbook)));
    }
    if (water < 0) {
      notes.estimate(
          "ice-melts-in-dough",
          "/desired",
          "no water is "
              + Thermometer.exact(water)
              + ": some of the ice has to melt in the dough, so take it flaked or crushed and see that it is gone when the mixing ends");
    }
  }
}
