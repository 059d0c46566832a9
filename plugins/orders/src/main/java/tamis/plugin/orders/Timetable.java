package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
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

  private static final String ANY_TIME = "2000-01-01T12:00";

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
    List<Making> made = order.stream().filter(making -> making.plan() != null).toList();
    int batches = 0;
    for (Making making : made) {
      batches += making.plan() == null ? 0 : making.plan().batches();
    }
    if (batches > MOST_BATCHES) {
      notes.remark(
          "no-timeline",
          "/due",
          "there is no timeline: it takes " + MOST_BATCHES + " batches, these are " + batches);
      return null;
    }
    DayWork work = DayWork.of(order, notes);
    if (!work.untimed().isEmpty()) {
      notes.remark(
          "no-timeline",
          "/due",
          "there is no timeline: these stages do not say how long they take: "
              + String.join(", ", work.untimed().stream().distinct().toList()));
      return null;
    }
    if (work.activities().isEmpty()) {
      notes.remark(
          "no-timeline", "/due", "there is no timeline: none of these formulas names its stages");
      return null;
    }
    try {
      return read(Found.of(kitchen.calculate("timeline", asked(input, work)).result()), work);
    } catch (Refusal refusal) {
      String why = refusal.faults().get(0).message().replace("`finishAt`", "`due`");
      notes.remark("no-timeline", "/due", "there is no timeline: " + why);
      return null;
    }
  }

  private static Map<String, Object> asked(Production.Input input, DayWork work) {
    Map<String, Object> asked = Written.map("activities", work.activities());
    asked.put("finishAt", String.valueOf(input.due()));
    if (input.asOf() != null) {
      asked.put("asOf", input.asOf().toString());
    }
    if (input.cooks() != null) {
      asked.put("cooks", input.cooks());
    }
    addTimes(input, asked);
    return asked;
  }

  private static void addTimes(Production.Input input, Map<String, Object> asked) {
    if (input.zone() != null) {
      asked.put("zone", input.zone());
    }
    if (!input.shifts().isEmpty()) {
      asked.put("shifts", input.shifts().stream().map(Written::of).toList());
    }
  }

  /**
   * Shifts and zones that cannot be meant, whether or not there is a timeline: the calculation of
   * timelines reads them with a step that takes no time.
   */
  static void check(Production.Input input, Kitchen kitchen, Faults faults) {
    if (input.zone() == null && input.shifts().isEmpty()) {
      return;
    }
    Map<String, Object> step = Written.map("id", "any", "minutes", 0, "hands", false);
    Map<String, Object> asked = Written.map("activities", List.of(step), "finishAt", ANY_TIME);
    addTimes(input, asked);
    try {
      kitchen.calculate("timeline", asked);
    } catch (Refusal refusal) {
      // What the caller said of shifts and zone goes by the same names there.
      refusal.faults().stream()
          .filter(
              fault -> fault.pointer().startsWith("/shifts/") || fault.pointer().equals("/zone"))
          .forEach(faults::add);
    }
  }

  private static Timetable read(Found found, DayWork work) {
    List<Step> steps = new ArrayList<>();
    for (Found step : found.list("steps")) {
      String id = step.textOr("id", "");
      DayWork.@Nullable Named named = work.named(id);
      steps.add(
          new Step(
              id,
              named == null ? null : named.formula(),
              named == null ? null : named.stage(),
              step.textOr("title", ""),
              step.text("station"),
              step.text("start"),
              step.text("finish")));
    }
    return new Timetable(
        found.text("start"),
        found.text("finish"),
        found.numberOr("minutes", 0),
        found.texts("criticalPath"),
        steps);
  }
}
