package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.plugin.timeline.network.Link;
import tamis.plugin.timeline.network.Network;
import tamis.plugin.timeline.network.Outcome;
import tamis.plugin.timeline.network.Planner;
import tamis.plugin.timeline.network.PoolOrder;
import tamis.plugin.timeline.network.WorkingTime;

/**
 * A plan made anew after delays: what had started stays, what had not is planned from now on, and
 * comes as late as the new finish allows.
 */
final class Replan {
  private final Work work;
  private final Network network;
  private final Steps before;
  private final long[] delays;
  private final long[] fixed;
  private final boolean[] started;
  private final long now;

  /**
   * @param network with all meetings and waits, in the lengths of the plan
   * @param before the plan as it was
   * @param delays how much longer each takes
   * @param now the moment of the new plan, or null: when the first delayed stage should have ended
   */
  Replan(Work work, Network network, Steps before, long[] delays, @Nullable Long now) {
    this.work = work;
    this.network = network;
    this.before = before;
    this.delays = delays;
    this.now = now == null ? firstDue() : now;
    this.fixed = new long[network.size()];
    this.started = new boolean[network.size()];
    settle();
  }

  private long firstDue() {
    long due = WorkingTime.NEVER;
    for (int i = 0; i < delays.length; i++) {
      if (delays[i] > 0) {
        due = Math.min(due, before.startOf(i) + network.length(i));
      }
    }
    return due;
  }

  long now() {
    return now;
  }

  boolean started(int task) {
    return started[task];
  }

  private long length(int task) {
    return network.length(task) + delays[task];
  }

  /** What had started: what was to, unless it still waited for what is late. */
  private void settle() {
    Map<Integer, List<Integer>> waitsFor = new HashMap<>();
    for (Link link : work.links()) {
      if (link.lag() > 0 || network.length(link.from()) == 0) {
        waitsFor.computeIfAbsent(link.to(), k -> new ArrayList<>()).add(link.from());
      }
    }
    for (PoolOrder.Turn turn : before.turns()) {
      waitsFor.computeIfAbsent(turn.link().to(), k -> new ArrayList<>()).add(turn.link().from());
    }
    for (int task : before.inOrder()) {
      long start = before.startOf(task);
      boolean free =
          waitsFor.getOrDefault(task, List.of()).stream()
              .allMatch(other -> started[other] && fixed[other] + length(other) <= start);
      started[task] = start < now && free;
      fixed[task] = start;
    }
  }

  /**
   * The new plan.
   *
   * @param wanted when all was to be ready; kept if it still can be
   * @param tolerance how far apart stages that meet may finish
   */
  Steps steps(long wanted, long tolerance, boolean lateAsCan) {
    Network late = asOfNow(tolerance);
    @Nullable Outcome outcome = Planner.thorough().earliest(late);
    if (outcome == null) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          "/delays",
          "what has not started cannot be planned anew so that stages that meet still do, or that"
              + " waits are kept; let them be longer, or begin the parts that meet again");
    }
    return Steps.of(late, work.tasks(), outcome.starts(), lateAsCan, wanted);
  }

  private Network asOfNow(long tolerance) {
    int size = network.size();
    long[] lengths = new long[size];
    long[] early = new long[size];
    long[] late = new long[size];
    boolean[] hands = new boolean[size];
    Arrays.setAll(lengths, this::length);
    for (int i = 0; i < size; i++) {
      early[i] = started[i] ? fixed[i] : Math.max(now, network.notBefore(i));
      late[i] = started[i] ? fixed[i] : WorkingTime.NEVER;
      hands[i] = network.attended(i) && !started[i];
    }
    List<Link> links = new ArrayList<>();
    for (Link link : work.links()) {
      long more = link.lag() > 0 ? delays[link.from()] : 0;
      if (!started[link.to()]) {
        links.add(new Link(link.from(), link.to(), link.lag() + more));
      }
    }
    for (Work.Wait wait : work.waits()) {
      if (!started[wait.first()]) { // of what has started the wait is told as a hold
        links.add(new Link(wait.second(), wait.first(), -lengths[wait.first()] - wait.most()));
      }
    }
    for (Work.Meeting meeting : work.meetings()) {
      if (!started[meeting.one()] && !started[meeting.other()]) {
        long one = lengths[meeting.one()];
        long other = lengths[meeting.other()];
        links.add(new Link(meeting.one(), meeting.other(), one - other - tolerance));
        links.add(new Link(meeting.other(), meeting.one(), other - one - tolerance));
      }
    }
    return new Network(lengths, early, late, hands, network.working(), links, network.pools());
  }

  /**
   * How long each started stage waits for what uses it, beyond what was planned; none of it for
   * what rests anyway until a later stage.
   */
  Map<Integer, Long> holds(Steps after) {
    Map<Integer, Long> holds = new HashMap<>();
    for (int i = 0; i < network.size(); i++) {
      long end = after.startOf(i) + length(i);
      long then = before.startOf(i) + network.length(i);
      long waits = nextUse(i, after) - end;
      long waited = nextUse(i, before) - then;
      if (waits > waited && started[i]) {
        holds.put(i, waits);
      }
    }
    return holds;
  }

  private long nextUse(int task, Steps steps) {
    return work.links().stream()
        .filter(link -> link.from() == task && link.lag() > 0)
        .map(link -> steps.startOf(link.to()))
        .min(Comparator.naturalOrder())
        .orElse(-WorkingTime.NEVER);
  }
}
