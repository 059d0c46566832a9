package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Nearest;

/** Activities as work: checks what they name, and turns them into tasks. */
final class Activities {
  /** Above this a suggestion would cost more than it helps. */
  private static final int MOST_SUGGESTED_FROM = 200;

  private final List<Activity> activities;
  private final Map<String, Integer> byId = new HashMap<>();

  Activities(List<Activity> activities) {
    this.activities = activities;
    for (int i = 0; i < activities.size(); i++) {
      byId.putIfAbsent(activities.get(i).id(), i);
    }
  }

  /** Names that stand twice or lead nowhere, and circles. */
  void check(Faults faults) {
    for (int i = 0; i < activities.size(); i++) {
      Activity activity = activities.get(i);
      String at = "/activities/" + i;
      if (activity.id().isBlank()) {
        faults.add(FaultCode.NOT_ALLOWED, at + "/id", "an activity needs an id, was blank");
      }
      if (byId.getOrDefault(activity.id(), i) != i) {
        faults.add(
            FaultCode.DUPLICATE, at + "/id", "activity `" + activity.id() + "` stands twice");
      }
      known(activity, activity.after(), at + "/after", "wait for", faults);
      known(activity, activity.meets(), at + "/meets", "meet", faults);
    }
    if (faults.isEmpty()) {
      refuseCircle(faults);
    }
  }

  private void known(
      Activity activity, List<String> names, String pointer, String verb, Faults faults) {
    for (int k = 0; k < names.size(); k++) {
      String name = names.get(k);
      if (name.equals(activity.id())) {
        faults.add(
            FaultCode.CYCLE,
            pointer + "/" + k,
            "activity `" + name + "` cannot " + verb + " itself");
      } else if (!byId.containsKey(name)) {
        String near =
            byId.size() > MOST_SUGGESTED_FROM ? "" : Nearest.suggestion(name, byId.keySet());
        faults.add(
            new Fault(
                FaultCode.UNKNOWN_STAGE,
                pointer + "/" + k,
                name,
                "the id of an activity",
                "no activity `" + name + "`" + near));
      }
    }
  }

  private void refuseCircle(Faults faults) {
    List<List<Integer>> before = new ArrayList<>();
    for (Activity activity : activities) {
      before.add(activity.after().stream().map(this::index).toList());
    }
    List<Integer> circle = Circle.in(before);
    if (!circle.isEmpty()) {
      List<String> path = circle.stream().map(i -> activities.get(i).id()).toList();
      faults.add(
          new Fault(
              FaultCode.CYCLE,
              "/activities/" + circle.get(0) + "/after",
              String.join(" → ", path),
              "no circle",
              "activities wait for each other in a circle: " + String.join(" → ", path)));
    }
  }

  private int index(String id) {
    Integer index = byId.get(id);
    return index == null ? -1 : index;
  }

  Work work() {
    Work work = new Work();
    for (int i = 0; i < activities.size(); i++) {
      Activity activity = activities.get(i);
      work.add(
          new Task(
              activity.id(),
              null,
              null,
              activity.title() == null ? activity.id() : activity.title(),
              activity.station(),
              Boolean.TRUE.equals(activity.hands()),
              Task.micros(activity.minutes()),
              "/activities/" + i));
    }
    for (int i = 0; i < activities.size(); i++) {
      link(i, work);
    }
    return work;
  }

  private void link(int i, Work work) {
    Activity activity = activities.get(i);
    for (String name : activity.after()) {
      int first = index(name);
      work.after(first, i);
      var within = activities.get(first).within();
      if (within != null) {
        work.usedWithin(first, i, Task.micros(within.minutes()));
      }
    }
    activity.meets().forEach(name -> work.meet(i, index(name)));
  }
}
