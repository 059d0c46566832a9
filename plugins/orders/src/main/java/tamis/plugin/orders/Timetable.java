package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.note.Notes;
import tamis.engine.record.Described;
import tamis.engine.spi.Kitchen;

/** When each stage starts, by the calculation of timelines. */
public record Timetable(
    @Described("Local time at which the first stage starts") @Nullable String start,
    @Described("Local time at which the last stage ends") @Nullable String finish,
    @Described(value = "From the first start to the last end", unit = "min") double minutes,
    @Described("Steps that have no time to spare") List<String> criticalPath,
    @Described("Every step, the first to start first") List<Step> steps) {
  /** Batches that one timeline takes. */
  private static final int MOST_BATCHES = 200;

  /** One step. */
  public record Step(
      @Described("Its name among the steps") String id,
      @Described("Id of its formula") @Nullable String formula,
      @Described("Id of its stage") @Nullable String stage,
      @Described("For a person") String title,
      @Described("Where it is done") @Nullable String station,
      @Described("Local time") @Nullable String start,
      @Described("Local time") @Nullable String finish) {}

  static @Nullable Timetable of(
      Production.Input input, List<Making> order, Kitchen kitchen, Notes notes) {
    if (input.due() == null) {
      return null;
    }
    List<Object> wanted = new ArrayList<>();
    List<String> names = new ArrayList<>();
    int batches = 0;
    for (Making making : order) {
      for (BatchPlan.Load load : loads(making)) {
        wanted.add(wanted(making, load));
        names.add(making.name());
        batches += load.number();
      }
    }
    if (batches > MOST_BATCHES) {
      notes.remark(
          "no-timeline",
          "/due",
          "there is no timeline: it takes " + MOST_BATCHES + " batches, these are " + batches);
      return null;
    }
    return wanted.isEmpty() ? null : planned(input, wanted, names, kitchen, notes);
  }

  /** What cannot be timed is left out once, and told. */
  private static @Nullable Timetable planned(
      Production.Input input,
      List<Object> wanted,
      List<String> names,
      Kitchen kitchen,
      Notes notes) {
    try {
      return read(Found.of(kitchen.calculate("timeline", asked(input, wanted)).result()));
    } catch (Refusal refusal) {
      refuseWrongTimes(refusal);
      String why = refusal.faults().get(0).message();
      List<Object> timed = new ArrayList<>();
      List<String> timedNames = new ArrayList<>();
      for (int i = 0; i < wanted.size(); i++) {
        String at = "/formulas/" + i + "/";
        if (refusal.faults().stream().noneMatch(fault -> fault.pointer().startsWith(at))) {
          timed.add(wanted.get(i));
          timedNames.add(names.get(i));
        }
      }
      if (timed.isEmpty() || timed.size() == wanted.size()) {
        notes.remark("no-timeline", "/due", "there is no timeline: " + why);
        return null;
      }
      List<String> left = new ArrayList<>(names);
      left.removeAll(timedNames);
      notes.remark(
          "not-timed", "/due", "the timeline is without " + String.join(", ", left) + ": " + why);
      return planned(input, timed, timedNames, kitchen, notes);
    }
  }

  /** Parts are made with what takes them up, as the timeline expands it. */
  private static List<BatchPlan.Load> loads(Making making) {
    return making.isOrdered() && making.plan() != null ? making.plan().loads() : List.of();
  }

  private static Map<String, Object> wanted(Making making, BatchPlan.Load load) {
    @Nullable Formula document = making.reference().object();
    Map<String, Object> wanted =
        document == null
            ? Written.map("formula", making.reference().toString())
            : Written.of(document);
    wanted.put("to", Written.of(making.sized(load.size())));
    wanted.put("count", load.number());
    return wanted;
  }

  private static Map<String, Object> asked(Production.Input input, List<Object> wanted) {
    Map<String, Object> asked = Written.map("formulas", wanted);
    asked.put("finishAt", String.valueOf(input.due()));
    if (input.asOf() != null) {
      asked.put("asOf", input.asOf().toString());
    }
    if (input.cooks() != null) {
      asked.put("cooks", input.cooks());
    }
    if (input.zone() != null) {
      asked.put("zone", input.zone());
    }
    if (!input.shifts().isEmpty()) {
      asked.put("shifts", input.shifts().stream().map(Written::of).toList());
    }
    return asked;
  }

  /** What the caller said of shifts and zone goes by the same names there. */
  private static void refuseWrongTimes(Refusal refusal) {
    Faults ours = new Faults();
    refusal.faults().stream()
        .filter(fault -> fault.pointer().startsWith("/shifts") || fault.pointer().equals("/zone"))
        .forEach(ours::add);
    ours.refuseIfAny();
  }

  private static Timetable read(Found found) {
    return new Timetable(
        found.text("start"),
        found.text("finish"),
        found.numberOr("minutes", 0),
        found.texts("criticalPath"),
        found.list("steps").stream()
            .map(
                step ->
                    new Step(
                        step.textOr("id", ""),
                        step.text("formula"),
                        step.text("stage"),
                        step.textOr("title", ""),
                        step.text("station"),
                        step.text("start"),
                        step.text("finish")))
            .toList());
  }
}
