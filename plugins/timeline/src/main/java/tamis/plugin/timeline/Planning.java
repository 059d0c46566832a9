package tamis.plugin.timeline;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;
import tamis.plugin.timeline.network.Link;
import tamis.plugin.timeline.network.Network;
import tamis.plugin.timeline.network.Outcome;
import tamis.plugin.timeline.network.Planner;
import tamis.plugin.timeline.network.Pool;
import tamis.plugin.timeline.network.WorkingTime;

/** Gives times to work, as an input wants it. */
final class Planning {
  private final Timeline.Input input;
  private final Work work;
  private final Notes notes;
  private final @Nullable Clock clock;
  private final long tolerance;
  private final Kitchen kitchen;

  Planning(Timeline.Input input, Work work, Notes notes, Kitchen kitchen) {
    this.kitchen = kitchen;
    this.input = input;
    this.work = work;
    this.notes = notes;
    @Nullable LocalDateTime given = input.isBackward() ? input.finishAt() : input.startAt();
    this.clock = given == null ? null : new Clock(given, input.zone());
    this.tolerance =
        input.tolerance() == null ? Task.micros(2) : Math.round(input.tolerance().seconds() * 1e6);
  }

  Timeline.Result result() {
    remarkTwice("/finishAt", input.finishAt());
    remarkTwice("/startAt", input.startAt());
    remarkTwice("/asOf", input.asOf());
    long[] delays = new Delays(input.delays(), work.tasks()).micros();
    boolean late = Arrays.stream(delays).anyMatch(delay -> delay > 0);
    Network base = base();
    refuseTooLong(base);
    Network network = base.with(bonds());
    Outcome outcome = plan(network, new Conflict(work, base, tolerance, input.isBackward()));
    Steps steps = Steps.of(network, work.tasks(), outcome.starts(), input.isBackward());
    if (!late) {
      refusePast(network, steps);
    }
    Report report = new Report(input, work, notes, clock, kitchen);
    report.bound(network, outcome, steps);
    if (!work.meetings().isEmpty() && input.tolerance() == null) {
      notes.cite(Rule.finishTogether(), "/steps");
    }
    return late ? replanned(network, steps, delays, report) : report.result(steps, null);
  }

  private Outcome plan(Network network, Conflict conflict) {
    Planner planner = Planner.thorough();
    try {
      @Nullable Outcome outcome =
          input.isBackward() ? planner.latest(network, 0) : planner.earliest(network);
      if (outcome != null) {
        return outcome;
      }
    } catch (Refusal tooHard) {
      conflict.known().refuseIfAny();
      throw tooHard;
    }
    throw conflict.refusal();
  }

  private Timeline.Result replanned(Network network, Steps steps, long[] delays, Report report) {
    Replan replan = new Replan(work, network, steps, delays, asOf());
    long wanted = input.isBackward() ? 0 : -WorkingTime.NEVER;
    return report.replanned(steps, replan, replan.steps(wanted, tolerance, input.isBackward()));
  }

  private void remarkTwice(String pointer, @Nullable LocalDateTime time) {
    if (time != null && Clock.isTwice(time, input.zone())) {
      notes.remark(
          "shown-twice",
          pointer,
          time
              + " is shown twice in "
              + input.zone()
              + ", when the clocks are put back; the first"
              + " is taken");
    }
  }

  private @Nullable Long asOf() {
    return clock == null || input.asOf() == null ? null : clock.micros(input.asOf());
  }

  /** Stages, stations, hands and shifts, without meetings and longest waits. */
  private Network base() {
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
    WorkingTime working =
        clock == null
            ? WorkingTime.always()
            : clock.working(input.shifts(), Arrays.stream(lengths).sum(), input.isBackward());
    List<Pool> pools = new Stations(input.stations(), input.cooksOrOne(), notes).pools(tasks);
    return new Network(lengths, notBefore, notAfter, hands, working, work.links(), pools);
  }

  private List<Link> bonds() {
    List<Link> bonds = new ArrayList<>();
    work.waits().forEach(wait -> bonds.add(work.link(wait)));
    work.meetings().forEach(meeting -> bonds.addAll(work.links(meeting, tolerance)));
    return bonds;
  }

  private void refuseTooLong(Network network) {
    Faults faults = new Faults();
    long longest = network.working().longest();
    for (int i = 0; i < network.size(); i++) {
      if (network.attended(i) && network.length(i) > longest) {
        Task task = work.tasks().get(i);
        faults.add(
            new Fault(
                FaultCode.IMPOSSIBLE,
                task.pointer(),
                Words.span(network.length(i)),
                "at most " + Words.span(longest),
                "`"
                    + task.id()
                    + "` needs hands for "
                    + Words.span(network.length(i))
                    + ", longer than any shift ("
                    + Words.span(longest)
                    + ")"));
      }
    }
    faults.refuseIfAny();
  }

  /** A plan that would have had to start already, with the earliest that is possible. */
  private void refusePast(Network network, Steps steps) {
    @Nullable Long now = asOf();
    if (now == null || clock == null || steps.start() >= now) {
      return;
    }
    String earliest = earliest(network, now, clock);
    String asked =
        input.isBackward()
            ? "`finishAt` "
                + input.finishAt()
                + " is too early: work would have to start at "
                + clock.local(steps.start())
                + ", before `asOf` "
                + input.asOf()
            : "`startAt` " + input.startAt() + " is before `asOf` " + input.asOf();
    throw new Refusal(
        new Fault(
            FaultCode.IMPOSSIBLE,
            input.isBackward() ? "/finishAt" : "/startAt",
            String.valueOf(input.isBackward() ? input.finishAt() : input.startAt()),
            earliest,
            asked + "; " + earliest));
  }

  private String earliest(Network network, long now, Clock from) {
    int size = network.size();
    long[] notBefore = new long[size];
    long[] notAfter = new long[size];
    Arrays.fill(notBefore, now);
    Arrays.fill(notAfter, WorkingTime.NEVER);
    WorkingTime later = from.working(input.shifts(), Planner.length(network), false);
    @Nullable Outcome outcome =
        Planner.thorough().earliest(network.between(notBefore, notAfter).in(later));
    return outcome == null
        ? "there is no later time at which it could be ready, with the shifts that are given"
        : "the earliest it can be ready is " + from.local(network.finish(outcome.starts()));
  }
}
