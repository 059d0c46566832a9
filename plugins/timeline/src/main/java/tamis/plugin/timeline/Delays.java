package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Nearest;

/** Finds the tasks that delays speak of. */
final class Delays {
  private static final int MOST_LISTED = 200;

  private final List<Delay> delays;
  private final List<Task> tasks;

  Delays(List<Delay> delays, List<Task> tasks) {
    this.delays = delays;
    this.tasks = tasks;
  }

  /**
   * How much longer each task takes. Of loads or batches alike, the first is meant.
   *
   * @throws tamis.engine.fault.Refusal if a stage is not known, or several are called so
   */
  long[] micros() {
    long[] more = new long[tasks.size()];
    Faults faults = new Faults();
    for (int k = 0; k < delays.size(); k++) {
      Delay delay = delays.get(k);
      List<Integer> found = new ArrayList<>();
      for (int i = 0; i < tasks.size(); i++) {
        if (tasks.get(i).isNamed(delay.stage(), delay.formula())) {
          found.add(i);
        }
      }
      if (found.isEmpty()) {
        faults.add(unknown(delay, "/delays/" + k));
      } else if (formulas(found).size() > 1) {
        faults.add(ambiguous(delay, formulas(found), "/delays/" + k));
      } else {
        more[found.get(0)] += Task.micros(delay.minutes());
      }
    }
    faults.refuseIfAny();
    return more;
  }

  private Set<String> formulas(List<Integer> found) {
    return found.stream()
        .map(i -> String.valueOf(tasks.get(i).formula()))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private Fault unknown(Delay delay, String at) {
    Set<String> names =
        tasks.stream()
            .filter(task -> delay.formula() == null || delay.formula().equals(task.formula()))
            .limit(MOST_LISTED)
            .map(task -> task.stage() == null ? task.id() : task.stage().id())
            .collect(Collectors.toCollection(TreeSet::new));
    String of = delay.formula() == null ? "" : " in `" + delay.formula() + "`";
    return new Fault(
        FaultCode.UNKNOWN_STAGE,
        at + "/stage",
        delay.stage(),
        String.join(", ", names),
        "no stage `"
            + delay.stage()
            + "`"
            + of
            + " in this plan"
            + Nearest.suggestion(delay.stage(), names));
  }

  private static Fault ambiguous(Delay delay, Set<String> formulas, String at) {
    return new Fault(
        FaultCode.INCONSISTENT,
        at + "/stage",
        delay.stage(),
        String.join(", ", formulas),
        "stage `"
            + delay.stage()
            + "` stands in several formulas ("
            + String.join(", ", formulas)
            + "); say which by `formula`");
  }
}
