package tamis.plugin.timeline;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Notes;

/** Gives times to work, as an input wants it. */
final class Planning {
  private final Timeline.Input input;
  private final Work work;
  private final Notes notes;
  private final @Nullable Clock clock;
  private final long tolerance;

  Planning(Timeline.Input input, Work work, Notes notes) {
    this.input = input;
    this.work = work;
    this.notes = notes;
    @Nullable LocalDateTime given = input.isBackward() ? input.finishAt() : input.startAt();
    this.clock = given == null ? null : new Clock(given, input.zone());
    this.tolerance =
        input.tolerance() == null ? Task.micros(2) : Math.round(input.tolerance().seconds() * 1e6);
  }

  Timeline.Result result() {
    if (!work.meetings().isEmpty() && input.tolerance() == null) {
      notes.cite(Rule.finishTogether(), "/steps");
    }
    Network network = network();
    refuseTooLong(network);
    @Nullable Outcome outcome =
        input.isBackward() ? Planner.latest(network, 0) : Planner.earliest(network);
    if (outcome == null) {
      throw Refusal.of(FaultCode.IMPOSSIBLE, "", "no order of work keeps to all that is asked");
    }
    Steps steps = Steps.of(network, work.tasks(), outcome.starts(), input.isBackward());
    return result(outcome, steps);
  }

  private Network network() {
    List<Task> tasks = work.tasks();
    int size = tasks.size();
    long[] lengths = tasks.stream().mapToLong(Task::micros).toArray();
    boolean[] hands = new boolean[size];
    long[] notBefore = new long[size];
    long[] notAfter = new long[size];
    Arrays.fill(notBefore, input.isBackward() ? -WorkingTime.NEVER : 0);
    for (int i = 0; i < size; i++) {
      hands[i] = tasks.get(i).hands();
      notAfter[i] = input.isBackward() ? -lengths[i] : WorkingTime.NEVER;
    }
    List<Link> links = new ArrayList<>(work.links());
    work.waits().forEach(wait -> links.add(work.link(wait)));
    work.meetings().forEach(meeting -> links.addAll(work.links(meeting, tolerance)));
    WorkingTime working =
        clock == null
            ? WorkingTime.always()
            : clock.working(input.shifts(), Arrays.stream(lengths).sum(), input.isBackward());
    List<Pool> pools = new Stations(input.stations(), input.cooksOrOne(), notes).pools(tasks);
    return new Network(lengths, notBefore, notAfter, hands, working, links, pools);
  }

  private void refuseTooLong(Network network) {
    Faults faults = new Faults();
    long longest = network.working().longest();
    for (int i = 0; i < network.size(); i++) {
      if (network.attended(i) && network.length(i) > longest) {
        Task task = work.tasks().get(i);
        faults.add(
            FaultCode.IMPOSSIBLE,
            task.pointer(),
            "`"
                + task.id()
                + "` needs hands for "
                + Words.span(network.length(i))
                + ", longer than any shift ("
                + Words.span(longest)
                + ")");
      }
    }
    faults.refuseIfAny();
  }

  private Timeline.Result result(Outcome outcome, Steps steps) {
    List<Step> shown = new ArrayList<>();
    List<String> critical = new ArrayList<>();
    for (int i : steps.inOrder()) {
      shown.add(steps.step(i, clock, null, null));
      if (steps.isCritical(i)) {
        critical.add(work.tasks().get(i).id());
      }
    }
    long length = input.isBackward() ? -steps.start() : steps.finish();
    long gap = Math.max(0, length - outcome.bound());
    return new Timeline.Result(
        clock == null ? null : clock.local(steps.start()),
        clock == null ? null : clock.local(steps.finish()),
        Task.minutes(steps.finish() - steps.start()),
        critical,
        List.copyOf(steps.boundBy()),
        outcome.isBest(),
        outcome.isBest() ? 0 : Task.minutes(gap),
        shown,
        cautions(),
        input.zone() == null ? null : input.zone().toString(),
        Words.key(input.toString()));
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
