package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Per;
import tamis.engine.formula.Repeats;
import tamis.engine.formula.Stage;
import tamis.engine.note.Notes;

/**
 * The stages of all batches of the day as work that waits for each other. A part is made once: what
 * takes it up waits for all its batches. What comes from stock is not made.
 */
final class DayWork {
  private final Map<String, Map<String, Object>> activities = new LinkedHashMap<>();
  private final Map<String, Named> names = new LinkedHashMap<>();
  private final Map<Making, List<String>> ends = new LinkedHashMap<>();
  private final Set<String> labels = new HashSet<>();
  private final List<String> untimed = new ArrayList<>();
  private final Notes notes;

  /** Whose stage an activity is. */
  record Named(String formula, String stage) {}

  private DayWork(Notes notes) {
    this.notes = notes;
  }

  /**
   * @param order parts before what takes them up
   */
  static DayWork of(List<Making> order, Notes notes) {
    DayWork work = new DayWork(notes);
    order.forEach(work::add);
    return work;
  }

  List<Map<String, Object>> activities() {
    return List.copyOf(activities.values());
  }

  /** Stages that do not say how long they take. */
  List<String> untimed() {
    return List.copyOf(untimed);
  }

  @Nullable Named named(String id) {
    return names.get(id);
  }

  private void add(Making making) {
    @Nullable BatchPlan plan = making.plan();
    List<String> last = new ArrayList<>();
    if (plan != null && making.formula().stages().isEmpty()) {
      // Nothing is said of its work: what takes it up waits for its parts.
      making.parts().keySet().forEach(part -> last.addAll(ends.getOrDefault(part, List.of())));
    } else if (plan != null) {
      int batches = plan.batches();
      String label = label(making);
      int number = 0;
      for (BatchPlan.Load load : plan.loads()) {
        for (int i = 0; i < load.number(); i++) {
          number++;
          String prefix = label + (batches > 1 ? "/batch-" + number : "");
          last.addAll(batch(making, load.size(), prefix));
        }
      }
    }
    ends.put(making, last);
  }

  /** Its name, told apart from another of the same name, such as an earlier revision. */
  private String label(Making making) {
    String label = making.name();
    for (int other = 2; !labels.add(label); other++) {
      label = making.name() + "-" + other;
    }
    return label;
  }

  /** Adds the stages of one batch and answers those that no other of it waits for. */
  private List<String> batch(Making making, double times, String prefix) {
    List<Stage> stages = making.formula().stages();
    List<String> last = new ArrayList<>();
    for (Stage stage : stages) {
      String id = prefix + "/" + stage.id();
      Map<String, Object> one = Written.map("id", id, "minutes", minutes(making, stage, times));
      List<String> after = new ArrayList<>();
      stage.after().forEach(earlier -> after.add(prefix + "/" + earlier));
      after.addAll(parts(making, stage));
      put(one, "title", stage.title());
      put(one, "station", stage.station());
      put(one, "hands", stage.hands());
      put(one, "within", stage.within() == null ? null : stage.within().toString());
      one.put("after", after);
      one.put("meets", stage.meets().stream().map(other -> prefix + "/" + other).toList());
      activities.put(id, one);
      names.put(id, new Named(making.name(), stage.id()));
      if (stages.stream().noneMatch(other -> other.after().contains(stage.id()))) {
        last.add(id);
      }
    }
    return last;
  }

  private static void put(Map<String, Object> one, String name, @Nullable Object value) {
    if (value != null) {
      one.put(name, value);
    }
  }

  /** What must be done of the parts that go in at a stage. */
  private List<String> parts(Making making, Stage stage) {
    List<String> before = new ArrayList<>();
    Part root = making.one().root();
    for (Part part : root.parts()) {
      if (stage.id().equals(making.formula().stageOf(root.lineOf(part)))) {
        making.parts().keySet().stream()
            .filter(one -> one.formula().equals(part.formula()))
            .forEach(one -> before.addAll(ends.getOrDefault(one, List.of())));
      }
    }
    return before.stream().distinct().toList();
  }

  private double minutes(Making making, Stage stage, double times) {
    if (stage.duration() == null) {
      untimed.add("`" + stage.id() + "` of `" + making.name() + "`");
      return 0; // and then there is no timeline
    }
    return stage.duration().minutes() * repeats(making, stage, times);
  }

  private double repeats(Making making, Stage stage, double times) {
    Repeats.Count count = making.repeats(times).of(stage);
    if (count.number() == null) {
      notes.estimate(
          "repeats-not-known",
          "/due",
          "stage `"
              + stage.id()
              + "` of `"
              + making.name()
              + "` is done for each "
              + (stage.per() == Per.PIECE ? "piece" : "load")
              + ", but "
              + count.lacks()
              + "; it is counted once");
      return 1;
    }
    return count.number();
  }
}
