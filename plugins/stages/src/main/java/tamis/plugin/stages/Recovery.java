package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Spread;

/** The heat that brings a batch from one temperature to another, and ways to bring it in. */
final class Recovery {
  private static final double SECONDS_PER_MINUTE = 60;
  private static final double ICE_WATER = 0;
  static final double REFRIGERATOR = 4;

  /** What part of a burner's or a bath's power gets into the bowl, where it is not told. */
  private static final Spread EFFICIENCY = new Spread(0.3, 0.5, 0.9);

  private final Makeup made;
  private final double kilograms;
  private final double from;
  private final double to;

  Recovery(Makeup made, double kilograms, double from, double to) {
    this.made = made;
    this.kilograms = kilograms;
    this.from = from;
    this.to = to;
  }

  /** Negative if heat is to be taken out. */
  Spread kilojoules() {
    double usual = heat(HeatModel.USUAL, from, to);
    double low = usual;
    double high = usual;
    for (boolean sugarFit : new boolean[] {true, false}) {
      for (double fatHeat : new double[] {0, 1}) {
        double other = heat(new HeatModel(sugarFit, fatHeat), from, to);
        low = Math.min(low, other);
        high = Math.max(high, other);
      }
    }
    return new Spread(low, usual, high);
  }

  private double heat(HeatModel model, double start, double end) {
    HeatContent content = new HeatContent(made, model);
    return kilograms * (content.at(end) - content.at(start));
  }

  /** The part to bring to {@code portionAt} and stir back: the rest takes up what it gives off. */
  double portion(double portionAt) {
    HeatContent content = new HeatContent(made, HeatModel.USUAL);
    return (content.at(to) - content.at(from)) / (content.at(portionAt) - content.at(from));
  }

  /** Minutes of heating at a power; the efficiency is a spread if it was not told. */
  Spread minutes(double watts, @Nullable Double efficiency) {
    double seconds = Math.abs(kilojoules().typical()) * 1000 / watts;
    Spread share = efficiency == null ? EFFICIENCY : Spread.exactly(efficiency);
    return new Spread(
        seconds / share.high() / SECONDS_PER_MINUTE,
        seconds / share.typical() / SECONDS_PER_MINUTE,
        seconds / share.low() / SECONDS_PER_MINUTE);
  }

  /** Minutes in ice water, stirred. */
  @Nullable Spread iceBathMinutes() {
    return bath(Surface.ICE_BATH, ICE_WATER);
  }

  /** Minutes in a refrigerator. */
  @Nullable Spread refrigeratorMinutes() {
    return bath(Surface.REFRIGERATOR, REFRIGERATOR);
  }

  /** Grams of ice that take up the heat by melting. */
  double iceGrams() {
    return Math.abs(kilojoules().typical()) / 333.6 * 1000;
  }

  private @Nullable Spread bath(Surface surface, double around) {
    if (to >= from || to <= around) {
      return null;
    }
    double perKelvin = Math.abs(kilojoules().typical()) * 1000 / (from - to);
    double span = Math.log((from - around) / (to - around));
    double area = surface.area(kilograms);
    Spread transfer = surface.transfer();
    return new Spread(
        perKelvin * span / (transfer.high() * area) / SECONDS_PER_MINUTE,
        perKelvin * span / (transfer.typical() * area) / SECONDS_PER_MINUTE,
        perKelvin * span / (transfer.low() * area) / SECONDS_PER_MINUTE);
  }
}
