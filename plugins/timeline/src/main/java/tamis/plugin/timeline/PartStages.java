package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Per;
import tamis.engine.formula.Repeats;
import tamis.engine.formula.Stage;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.TimeSpan;

/**
 * The stages of one formula and of its sub-formulas. A sub-formula is ready before the stage of the
 * line that uses it; without such a stage, before the first stages.
 */
final class PartStages {
  private final Work work;
  private final Faults faults;
  private final Notes notes;
  private final String at;
  private final @Nullable To to;

  PartStages(Work work, Faults faults, Notes notes, String at, @Nullable To to) {
    this.work = work;
    this.faults = faults;
    this.notes = notes;
    this.at = at;
    this.to = to;
  }

  /** The last stages of a part, with the longest wait that each allows. */
  private record Ends(List<Integer> tasks) {}

  void add(Batch.Part part, String label) {
    part(part, label, Repeats.of(part, to));
  }

  private Ends part(Batch.Part part, String label, Repeats repeats) {
    Map<Batch.Part, Ends> inner = new LinkedHashMap<>();
    Set<String> names = new HashSet<>();
    for (Batch.Part sub : part.parts()) {
      @Nullable String id = sub.formula().id();
      String name = id == null ? "part" : id;
      String unique = names.add(name) ? name : name + "-" + names.size();
      inner.put(sub, part(sub, label + "/" + unique, Repeats.of(sub, null)));
    }
    Map<String, List<Integer>> stages = new LinkedHashMap<>();
    for (Stage stage : part.formula().stages()) {
      stages.put(stage.id(), tasks(part, stage, label, repeats));
    }
    if (stages.isEmpty()) {
      return withoutStages(part, inner);
    }
    link(part.formula().stages(), stages);
    inner.forEach((sub, ends) -> use(part, sub, ends, stages));
    return new Ends(ends(part.formula().stages(), stages));
  }

  private Ends withoutStages(Batch.Part part, Map<Batch.Part, Ends> inner) {
    notes.remark(
        "no-stages",
        at,
        "`" + part.formula().name() + "` has no stages of its own; it is taken to need no time");
    List<Integer> ends = new ArrayList<>();
    inner.values().forEach(one -> ends.addAll(one.tasks()));
    return new Ends(ends);
  }

  /** One task a load, else one. */
  private List<Integer> tasks(Batch.Part part, Stage stage, String label, Repeats repeats) {
    @Nullable TimeSpan duration = stage.duration();
    String name = "stage `" + stage.id() + "` of `" + part.formula().name() + "`";
    if (duration == null) {
      faults.add(
          FaultCode.INCOMPLETE,
          at,
          name + " has no `duration`; not known is not zero, so it must be given");
      return List.of();
    }
    @Nullable Double times = times(stage, name, repeats);
    if (times == null) {
      return List.of();
    }
    if (stage.hands() == null) {
      notes.remark(
          "hands-not-stated",
          at,
          name + " does not say `hands`; it is taken to leave the cook free");
    }
    // Pieces are worked off in one go, loads are tasks of their own.
    boolean inLoads = stage.per() == Per.LOAD;
    long micros = Math.round(duration.seconds() * 1e6 * (inLoads ? 1 : times));
    int all = inLoads ? (int) (double) times : 1;
    List<Integer> loads = new ArrayList<>();
    for (int load = 1; load <= all; load++) {
      loads.add(work.add(task(part, stage, label, micros, load, all)));
      if (load > 1) {
        work.notBefore(loads.get(load - 2), loads.get(load - 1)); // loads alike
      }
    }
    return loads;
  }

  /** Null if it is not known or too many; the fault is then gathered. */
  private @Nullable Double times(Stage stage, String name, Repeats repeats) {
    Repeats.Count count = repeats.of(stage);
    if (count.number() == null) {
      String per = stage.per() == Per.PIECE ? "piece" : "load";
      faults.add(
          FaultCode.INCOMPLETE, at, name + " is repeated per " + per + ", but " + count.lacks());
    } else if (stage.per() == Per.LOAD && !(count.number() <= Work.MOST_TASKS)) {
      faults.add(
          FaultCode.TOO_MANY, at, name + " comes to more than " + Work.MOST_TASKS + " loads");
      return null;
    }
    return count.number();
  }

  private Task task(Batch.Part part, Stage stage, String label, long micros, int load, int loads) {
    String id = label + "/" + stage.id();
    String title = stage.title() == null ? stage.id() : stage.title();
    return new Task(
        loads > 1 ? id + "/load-" + load : id,
        part.formula().id(),
        stage,
        loads > 1 ? title + " (load " + load + " of " + loads + ")" : title,
        stage.station(),
        Boolean.TRUE.equals(stage.hands()),
        micros,
        at);
  }

  private void link(List<Stage> stages, Map<String, List<Integer>> tasks) {
    for (Stage stage : stages) {
      List<Integer> own = tasks(stage.id(), tasks);
      for (String before : stage.after()) {
        chain(tasks(before, tasks), own);
      }
      for (String other : stage.meets()) {
        List<Integer> others = tasks(other, tasks);
        if (!own.isEmpty() && !others.isEmpty()) {
          work.meet(own.get(own.size() - 1), others.get(others.size() - 1));
        }
      }
    }
  }

  private static List<Integer> tasks(String stage, Map<String, List<Integer>> tasks) {
    return tasks.getOrDefault(stage, List.of());
  }

  private void chain(List<Integer> before, List<Integer> after) {
    for (int first : before) {
      for (int second : after) {
        work.after(first, second);
      }
    }
    if (!before.isEmpty() && !after.isEmpty()) {
      waitAtMost(before.get(before.size() - 1), after.get(0));
    }
  }

  private void waitAtMost(int first, int second) {
    @Nullable Stage stage = work.tasks().get(first).stage();
    @Nullable TimeSpan within = stage == null ? null : stage.within();
    if (within != null) {
      work.usedWithin(first, second, Math.round(within.seconds() * 1e6));
    }
  }

  private void use(Batch.Part part, Batch.Part sub, Ends ends, Map<String, List<Integer>> stages) {
    @Nullable String stage = part.lineOf(sub).stage();
    List<Integer> users = new ArrayList<>();
    if (stage != null) {
      users.addAll(tasks(stage, stages));
    } else {
      part.formula().stages().stream()
          .filter(one -> one.after().isEmpty())
          .forEach(one -> users.addAll(tasks(one.id(), stages)));
    }
    for (int end : ends.tasks()) {
      users.forEach(user -> work.after(end, user));
      if (!users.isEmpty()) {
        waitAtMost(end, users.get(0));
      }
    }
  }

  /** Tasks of the stages that no other stage of the formula waits for. */
  private static List<Integer> ends(List<Stage> stages, Map<String, List<Integer>> tasks) {
    Set<String> waitedFor = new HashSet<>();
    stages.forEach(stage -> waitedFor.addAll(stage.after()));
    return IntStream.range(0, stages.size())
        .mapToObj(i -> stages.get(i).id())
        .filter(id -> !waitedFor.contains(id))
        .flatMap(id -> tasks(id, tasks).stream())
        .toList();
  }
}
