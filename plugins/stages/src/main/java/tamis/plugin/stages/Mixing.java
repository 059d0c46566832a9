package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Spread;

/**
 * Parts that come to one temperature: what some give off the others take up, with the bowl and with
 * what the room takes from the hottest while it is poured.
 */
final class Mixing {
  private final List<Part> parts;
  private final List<Makeup> made;
  private final @Nullable Pour pour;
  private final @Nullable Bowl bowl;

  Mixing(List<Part> parts, List<Makeup> made, @Nullable Pour pour, @Nullable Bowl bowl) {
    this.parts = List.copyOf(parts);
    this.made = List.copyOf(made);
    this.pour = pour;
    this.bowl = bowl;
  }

  /**
   * @param celsius of all together
   * @param heats what each part takes up, in kJ, negative if it gives off
   * @param bowl what the bowl takes up, in kJ
   * @param room what the room takes, in kJ
   * @param arrival at which the poured part reaches the bowl, or null without a pour
   */
  record Outcome(
      double celsius, List<Double> heats, double bowl, double room, @Nullable Double arrival) {}

  /**
   * @param loss 0 for the slowest loss of heat to the room, 0.5 for the usual, 1 for the fastest
   */
  Outcome outcome(HeatModel model, double loss) {
    List<HeatContent> contents = new ArrayList<>();
    made.forEach(makeup -> contents.add(new HeatContent(makeup, model)));
    int hottest = hottest();
    @Nullable Double arrival = pour == null ? null : arrival(pour, hottest, contents, loss);
    double[] before = new double[parts.size()];
    double room = 0;
    double low = bowl == null ? Double.POSITIVE_INFINITY : bowl.temperature().celsius();
    double high = bowl == null ? Double.NEGATIVE_INFINITY : low;
    for (int i = 0; i < parts.size(); i++) {
      double celsius = parts.get(i).temperature().celsius();
      double entering = arrival != null && i == hottest ? arrival : celsius;
      before[i] = contents.get(i).at(entering);
      room += parts.get(i).kilograms() * (contents.get(i).at(celsius) - before[i]);
      low = Math.min(low, entering);
      high = Math.max(high, entering);
    }
    double celsius = Roots.between(low, high, t -> gained(t, contents, before));
    List<Double> heats = new ArrayList<>();
    for (int i = 0; i < parts.size(); i++) {
      double start = contents.get(i).at(parts.get(i).temperature().celsius());
      heats.add(parts.get(i).kilograms() * (contents.get(i).at(celsius) - start) + 0.0);
    }
    return new Outcome(celsius, heats, bowlHeat(celsius), room, arrival);
  }

  /** The temperature by the usual figures, and how far it lies apart by others. */
  Spread celsius() {
    double usual = outcome(HeatModel.USUAL, 0.5).celsius();
    double low = usual;
    double high = usual;
    for (boolean sugarFit : new boolean[] {true, false}) {
      for (double fatHeat : new double[] {0, 1}) {
        for (double loss : pour == null ? new double[] {0.5} : new double[] {0, 1}) {
          double other = outcome(new HeatModel(sugarFit, fatHeat), loss).celsius();
          low = Math.min(low, other);
          high = Math.max(high, other);
        }
      }
    }
    return new Spread(low, usual, high);
  }

  private double gained(double celsius, List<HeatContent> contents, double[] before) {
    double sum = bowlHeat(celsius);
    for (int i = 0; i < parts.size(); i++) {
      sum += parts.get(i).kilograms() * (contents.get(i).at(celsius) - before[i]);
    }
    return sum;
  }

  private double bowlHeat(double celsius) {
    return bowl == null ? 0 : bowl.kilojoulesPerKelvin() * (celsius - bowl.temperature().celsius());
  }

  private double arrival(Pour how, int hottest, List<HeatContent> contents, double loss) {
    Part part = parts.get(hottest);
    double celsius = part.temperature().celsius();
    double heat = contents.get(hottest).slope(celsius) * part.kilograms() * 1000;
    return how.arrival(
        new Pour.Hot(part.kilograms(), celsius, heat),
        at(Surface.PAN.transfer(), loss),
        at(Surface.STREAM.transfer(), loss));
  }

  private static double at(Spread spread, double place) {
    return place == 0.5 ? spread.typical() : spread.low() + place * (spread.high() - spread.low());
  }

  int hottest() {
    int hottest = 0;
    for (int i = 1; i < parts.size(); i++) {
      if (parts.get(i).temperature().compareTo(parts.get(hottest).temperature()) > 0) {
        hottest = i;
      }
    }
    return hottest;
  }

  Makeup made(int index) {
    return made.get(index);
  }
}
