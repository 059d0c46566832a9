package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;
import tamis.plugin.timeline.network.Pool;

/** How much the stations and the cooks can do at a time: as told, else as is usual. */
final class Stations {
  static final Table TABLE =
      TableReader.read(
          Stations.class,
          "/tamis/plugin/timeline/station-capacity.csv",
          "How many stages, or loads, stations usually take at a time; empty: not counted",
          List.of("station"));
  static final String HANDS = "hands";

  private final Map<String, Integer> told = new LinkedHashMap<>();
  private final int cooks;
  private final Notes notes;

  Stations(List<StationCapacity> stations, int cooks, Notes notes) {
    stations.forEach(station -> told.put(key(station.name()), station.capacity()));
    this.cooks = cooks;
    this.notes = notes;
  }

  static String key(String station) {
    return station.strip().toLowerCase(Locale.ROOT);
  }

  List<Pool> pools(List<Task> tasks) {
    Map<String, List<Integer>> members = new LinkedHashMap<>();
    for (int i = 0; i < tasks.size(); i++) {
      Task task = tasks.get(i);
      if (task.station() != null && !task.station().isBlank()) {
        members.computeIfAbsent(key(task.station()), s -> new ArrayList<>()).add(i);
      }
      if (task.hands()) {
        members.computeIfAbsent("\0", s -> new ArrayList<>()).add(i); // no station's name
      }
    }
    List<Pool> pools = new ArrayList<>();
    members.forEach(
        (name, of) -> {
          if (name.equals("\0")) {
            pools.add(new Pool(HANDS, cooks, of));
          } else {
            pools.add(new Pool(name, capacity(name, of.size()), of));
          }
        });
    unused(members);
    return pools;
  }

  private void unused(Map<String, List<Integer>> members) {
    for (String name : told.keySet()) {
      if (!members.containsKey(name)) {
        notes.remark(
            "station-not-used",
            "/stations",
            "no stage is done at `" + name + "`; known here: " + String.join(", ", named(members)));
      }
    }
  }

  private static List<String> named(Map<String, List<Integer>> members) {
    return members.keySet().stream().filter(name -> !name.equals("\0")).toList();
  }

  /** Told, usual, or one; what is not told is said to be assumed as soon as it could bind. */
  private int capacity(String station, int members) {
    @Nullable Integer given = told.get(station);
    if (given != null) {
      return given;
    }
    @Nullable Row row = TABLE.row(station);
    @Nullable String usual = row == null ? "1" : row.textOrNull("at_a_time");
    if (row != null) {
      notes.cite(row, "/steps");
    }
    if (usual == null) {
      return Integer.MAX_VALUE;
    }
    int capacity = Integer.parseInt(usual);
    if (members > capacity) {
      notes.estimate(
          "station-assumed",
          "/stations",
          "`" + station + "` is taken to hold " + capacity + " at a time; `stations` can say more");
    }
    return capacity;
  }
}
