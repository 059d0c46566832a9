package tamis.plugin.timeline;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongFunction;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.plugin.timeline.network.Link;
import tamis.plugin.timeline.network.Network;
import tamis.plugin.timeline.network.Planner;

/** Says why there is no plan: which stages cannot meet or be used in time, and by how much. */
final class Conflict {
  private static final long SECOND = 1_000_000;
  private static final int MOST_TOLD = 20;

  /** Of more stages, two that cannot meet are looked at without the others. */
  private static final int MOST_WHOLE = 200;

  private static final int MOST_LOOKED_AT = 2_000;

  private final Work work;
  private final Network network;
  private final long tolerance;
  private final boolean backward;

  /**
   * @param network with none of the meetings and longest waits
   * @param tolerance how far apart stages that meet may finish
   */
  Conflict(Work work, Network network, long tolerance, boolean backward) {
    this.work = work;
    this.network = network;
    this.tolerance = tolerance;
    this.backward = backward;
  }

  Refusal refusal() {
    Faults faults = known();
    if (faults.isEmpty()) {
      faults.add(FaultCode.IMPOSSIBLE, "", together());
    }
    return refusal(faults);
  }

  /** What cannot hold even alone; empty if nothing was found. */
  Faults known() {
    Faults faults = new Faults();
    if (!isPossible(network)) {
      faults.add(
          FaultCode.IMPOSSIBLE,
          "/shifts",
          "the stages that need hands do not all fit into the shifts; give more shifts or cooks");
      return faults;
    }
    work.meetings().stream().limit(MOST_LOOKED_AT).forEach(meeting -> look(meeting, faults));
    work.waits().stream().limit(MOST_LOOKED_AT).forEach(wait -> look(wait, faults));
    return faults;
  }

  private void look(Work.Meeting meeting, Faults faults) {
    Task one = task(meeting.one());
    Task other = task(meeting.other());
    Pair pair = new Pair(meeting.one(), meeting.other(), apart -> work.links(meeting, apart));
    if (faults.size() < MOST_TOLD && !isPossible(pair, tolerance)) {
      boolean hands = one.hands() && other.hands();
      String message =
          String.format(
              "`%s` and `%s` cannot finish within %s of each other; the least is %s apart%s",
              one.id(),
              other.id(),
              Words.span(tolerance),
              Words.span(least(pair, tolerance)),
              hands ? " (both need a cook's hands all the time)" : "");
      faults.add(FaultCode.IMPOSSIBLE, one.pointer(), message);
    }
  }

  private void look(Work.Wait wait, Faults faults) {
    Task first = task(wait.first());
    Task second = task(wait.second());
    Pair pair =
        new Pair(
            wait.first(),
            wait.second(),
            most -> List.of(work.link(new Work.Wait(wait.first(), wait.second(), most))));
    if (faults.size() < MOST_TOLD && !isPossible(pair, wait.most())) {
      String message =
          String.format(
              "`%s` cannot start within %s of the end of `%s`; the least is %s",
              second.id(),
              Words.span(wait.most()),
              first.id(),
              Words.span(least(pair, wait.most())));
      faults.add(FaultCode.IMPOSSIBLE, first.pointer(), message);
    }
  }

  /** Two tasks and what binds them, by how much time it leaves. */
  private record Pair(int one, int other, LongFunction<List<Link>> links) {}

  private static Refusal refusal(Faults faults) {
    try {
      faults.refuseIfAny();
      throw new IllegalStateException("a conflict without a fault");
    } catch (Refusal refusal) {
      return refusal;
    }
  }

  /** Each can hold alone, but not all of them. */
  private String together() {
    Set<String> pairs = new LinkedHashSet<>();
    for (Work.Meeting meeting : work.meetings()) {
      String turned =
          "`" + task(meeting.other()).id() + "` with `" + task(meeting.one()).id() + "`";
      if (pairs.contains(turned)) {
        continue;
      }
      pairs.add("`" + task(meeting.one()).id() + "` with `" + task(meeting.other()).id() + "`");
    }
    for (Work.Wait wait : work.waits()) {
      pairs.add("`" + task(wait.second()).id() + "` soon after `" + task(wait.first()).id() + "`");
    }
    List<String> told = pairs.stream().limit(MOST_TOLD).toList();
    return "these cannot all hold at once: "
        + String.join(", ", told)
        + "; allow more tolerance, longer waits or more cooks";
  }

  private Task task(int index) {
    return work.tasks().get(index);
  }

  /** The least that can hold, to the second: between what cannot and any length of time. */
  private long least(Pair pair, long impossible) {
    long low = impossible / SECOND;
    long high = Planner.length(network) / SECOND + 1;
    while (low + 1 < high) {
      long middle = (low + high) / 2;
      if (isPossible(pair, middle * SECOND)) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high * SECOND;
  }

  private boolean isPossible(Pair pair, long time) {
    Network asked = network.with(pair.links().apply(time));
    boolean whole = network.size() <= MOST_WHOLE;
    return isPossible(whole ? asked : asked.only(List.of(pair.one(), pair.other())));
  }

  /** Whether there is a plan; where the search gives up, there may be one. */
  private boolean isPossible(Network asked) {
    Planner planner = Planner.quick();
    try {
      return (backward ? planner.latest(asked, 0) : planner.earliest(asked)) != null;
    } catch (Refusal tooHard) {
      return true;
    }
  }
}
