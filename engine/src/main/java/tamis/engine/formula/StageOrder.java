package tamis.engine.formula;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Finds stages that wait for each other in a circle. */
final class StageOrder {
  private StageOrder() {}

  static void refuseCycle(List<Stage> stages, Faults faults) {
    if (!areInOrder(stages)) {
      search(stages, faults);
    }
  }

  /** Stages that wait only for those written before them, as most do, are in no circle. */
  private static boolean areInOrder(List<Stage> stages) {
    Set<String> before = new HashSet<>();
    for (Stage stage : stages) {
      if (!before.containsAll(stage.after())) {
        return false;
      }
      before.add(stage.id());
    }
    return true;
  }

  private static void search(List<Stage> stages, Faults faults) {
    Map<String, Stage> byId = new HashMap<>();
    stages.forEach(stage -> byId.put(stage.id(), stage));
    Set<String> done = new HashSet<>();
    for (int i = 0; i < stages.size(); i++) {
      Deque<String> path = new ArrayDeque<>();
      if (circular(stages.get(i), byId, done, path)) {
        faults.add(
            FaultCode.CYCLE,
            "/stages/" + i + "/after",
            "stages wait for each other in a circle: " + String.join(" → ", path));
        return;
      }
    }
  }

  private static boolean circular(
      Stage stage, Map<String, Stage> byId, Set<String> done, Deque<String> path) {
    if (done.contains(stage.id())) {
      return false;
    }
    boolean again = path.contains(stage.id());
    path.addLast(stage.id());
    if (again) {
      return true;
    }
    for (String before : stage.after()) {
      Stage next = byId.get(before);
      if (next != null && circular(next, byId, done, path)) {
        return true;
      }
    }
    path.removeLast();
    done.add(stage.id());
    return false;
  }
}
