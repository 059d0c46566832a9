package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.PanCount;
import tamis.plugin.orders.BatchPlan.Machine;

/** What a batch of a formula may be at most, and at least, on the machines there are. */
final class Machines {
  private final List<Capacity> capacities;

  Machines(List<Capacity> capacities) {
    this.capacities = capacities;
  }

  /**
   * The machines to choose from, in times the formula as written. The station with the most of them
   * is chosen from; the largest of every other station and the pans bound all of these.
   */
  List<Machine> of(Making making) {
    Map<String, List<Machine>> stations = new LinkedHashMap<>();
    double bound = Double.POSITIVE_INFINITY;
    for (Capacity capacity : capacities) {
      if (capacity.pan() != null) {
        bound = Math.min(bound, pans(capacity, making.formula()));
      } else if (capacity.station() != null && binds(capacity.station(), making.formula())) {
        String key = capacity.station().strip().toLowerCase(Locale.ROOT);
        stations.computeIfAbsent(key, name -> new ArrayList<>()).add(machine(capacity, making));
      }
    }
    List<Machine> choice = List.of();
    for (List<Machine> machines : stations.values()) {
      choice = machines.size() > choice.size() ? machines : choice;
    }
    for (List<Machine> machines : stations.values()) {
      if (!machines.equals(choice)) {
        double largest = machines.stream().mapToDouble(Machine::most).max().orElse(bound);
        bound = Math.min(bound, largest);
      }
    }
    double most = bound;
    return choice.isEmpty()
        ? List.of(new Machine(null, 0, most))
        : choice.stream()
            .map(one -> new Machine(one.name(), one.least(), Math.min(most, one.most())))
            .toList();
  }

  private static boolean binds(String station, Formula formula) {
    return formula.stages().isEmpty()
        || formula.stages().stream()
            .anyMatch(
                stage ->
                    stage.station() != null && stage.station().equalsIgnoreCase(station.strip()));
  }

  private static Machine machine(Capacity capacity, Making making) {
    double grams = making.one().root().weighed().typical();
    double most =
        capacity.most() == null ? Double.POSITIVE_INFINITY : capacity.most().grams() / grams;
    @Nullable Double pieces = making.formula().yieldOrNothing().pieces();
    if (capacity.pieces() != null && pieces != null) {
      most = Math.min(most, capacity.pieces() / pieces);
    }
    double least = capacity.least() == null ? 0 : capacity.least().grams() / grams;
    return new Machine(capacity.words(), least, most);
  }

  private static double pans(Capacity capacity, Formula formula) {
    for (PanCount pan : formula.yieldOrNothing().pans()) {
      if (pan.pan().equals(capacity.pan()) && capacity.count() != null) {
        return (double) capacity.count() / pan.number();
      }
    }
    return Double.POSITIVE_INFINITY;
  }
}
