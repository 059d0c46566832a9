package tamis.plugin.timeline;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;
import tamis.plugin.timeline.network.Network;
import tamis.plugin.timeline.network.Outcome;
import tamis.plugin.timeline.network.Planner;

/** Puts a plan into words and figures. */
final class Report {
  private static final Timing BEST = new Timing(true, 0, List.of());

  private final Timeline.Input input;
  private final Work work;
  private final Notes notes;
  private final @Nullable Clock clock;
  private final Kitchen kitchen;
  private Timing timing = BEST;

  /** How good the plan is, and what bound it. */
  private record Timing(boolean best, double gap, List<String> boundBy) {}

  Report(Timeline.Input input, Work work, Notes notes, @Nullable Clock clock, Kitchen kitchen) {
    this.kitchen = kitchen;
    this.input = input;
    this.work = work;
    this.notes = notes;
    this.clock = clock;
  }

  /** Says what makes the plan longer than its stages alone, and how much shorter one could be. */
  void bound(Network network, Outcome outcome, Steps steps) {
    long length = input.isBackward() ? -steps.start() : steps.finish();
    double gap = outcome.isBest() ? 0 : Task.minutes(Math.max(0, length - outcome.bound()));
    List<String> boundBy = List.of();
    long free = free(network);
    if (length > free) {
      boundBy = List.copyOf(steps.boundBy());
      String names = boundBy.isEmpty() ? "stations or hands" : String.join(" and ", boundBy);
      notes.remark(
          "bound-by",
          boundBy.contains(Stations.HANDS) ? "/cooks" : "/stations",
          "bound by "
              + names
              + ": "
              + Words.span(length)
              + ", where the stages alone, without"
              + " waiting for hands or stations, would take "
              + Words.span(free));
    }
    if (!outcome.isBest()) {
      notes.estimate(
          "not-proven",
          "",
          "this is the best order found within the steps of search allowed; none is shorter by"
              + " more than "
              + Words.span(Math.max(0, length - outcome.bound())));
    }
    timing = new Timing(outcome.isBest(), gap, boundBy);
  }

  private long free(Network network) {
    Network alone = network.withoutPools();
    @Nullable Outcome outcome =
        input.isBackward()
            ? Planner.thorough().latest(alone, 0)
            : Planner.thorough().earliest(alone);
    if (outcome == null) {
      return 0;
    }
    return input.isBackward() ? -Network.start(outcome.starts()) : network.finish(outcome.starts());
  }

  /** A plan made anew, with what had started and what is held. */
  Timeline.Result replanned(Steps before, Replan replan, Steps after) {
    Map<Integer, Long> holds = replan.holds(after);
    long later = after.finish() - before.finish();
    if (later > 0) {
      notes.remark(
          "later",
          "/delays",
          "ready "
              + Words.span(later)
              + " later than planned"
              + (clock == null ? "" : ", at " + clock.local(after.finish())));
    } else {
      notes.remark("in-time", "/delays", "the delay is made up for: ready as planned");
    }
    timing = new Timing(timing.best(), timing.gap(), List.copyOf(after.boundBy()));
    return result(after, new Anew(replan, holds));
  }

  /** What a new plan knows besides times. */
  record Anew(Replan replan, Map<Integer, Long> holds) {}

  Timeline.Result result(Steps steps, @Nullable Anew anew) {
    List<Step> shown = new ArrayList<>();
    List<String> critical = new ArrayList<>();
    for (int i : steps.inOrder()) {
      Steps.@Nullable Held held =
          anew == null ? null : held(i, anew.holds().get(i), "/steps/" + shown.size());
      shown.add(steps.step(i, clock, anew == null ? null : anew.replan().started(i), held));
      if (steps.isCritical(i)) {
        critical.add(work.tasks().get(i).id());
      }
    }
    return new Timeline.Result(
        clock == null ? null : clock.local(steps.start()),
        clock == null ? null : clock.local(steps.finish()),
        Task.minutes(steps.finish() - steps.start()),
        critical,
        timing.boundBy(),
        timing.best(),
        timing.gap(),
        shown,
        cautions(),
        input.zone() == null ? null : input.zone().toString(),
        Words.key(input.toString()),
        stamp(),
        kitchen.revision());
  }

  private String stamp() {
    @Nullable LocalDateTime asOf = input.asOf();
    if (asOf == null) {
      return CalendarText.stamp(Objects.requireNonNullElse(kitchen.written(), Instant.EPOCH));
    }
    ZoneId zone = input.zone() == null ? ZoneOffset.UTC : input.zone().id();
    return CalendarText.stamp(asOf.atZone(zone).toInstant());
  }

  private Steps.@Nullable Held held(int i, @Nullable Long hold, String pointer) {
    if (hold == null) {
      return null;
    }
    Task task = work.tasks().get(i);
    double minutes = Task.minutes(hold);
    String advice = Holding.advice(task, minutes, notes, pointer + "/hold");
    notes.remark("hold", "/delays", "hold `" + task.id() + "`: " + advice);
    return new Steps.Held(minutes, advice);
  }

  private List<String> cautions() {
    Set<String> cautions = new LinkedHashSet<>();
    for (Task task : work.tasks()) {
      @Nullable StageTarget target = task.target();
      if (target != null && target.kind() == StageTarget.Kind.SUGAR_SYRUP) {
        cautions.add(Words.HOT_SUGAR);
        notes.caution("hot-sugar", task.pointer(), Words.HOT_SUGAR);
      }
    }
    return List.copyOf(cautions);
  }
}
