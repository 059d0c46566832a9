package tamis.plugin.timeline;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongFunction;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/** Says why there is no plan: which stages cannot meet or be used in time, and by how much. */
final class Conflict {
  private static final long SECOND = 1_000_000;
  private static final int MOST_TOLD = 20;

  /** One for whether it can hold, the rest for the least that can. */
  private static final int TRIES_FOR_ONE = 25;

  private static final int STAGES_TRIED = 200_000;

  private final Work work;
  private final Network network;
  private final long tolerance;
  private final boolean backward;
  private int tries;

  /**
   * @param network with none of the meetings and longest waits
   * @param tolerance how far apart stages that meet may finish
   */
  Conflict(Work work, Network network, long tolerance, boolean backward) {
    this.work = work;
    this.network = network;
    this.tolerance = tolerance;
    this.backward = backward;
    this.tries = Math.max(2 * TRIES_FOR_ONE, STAGES_TRIED / network.size());
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
    if (!isPossible(List.of())) {
      faults.add(
          FaultCode.IMPOSSIBLE,
          "/shifts",
          "the stages that need hands do not all fit into the shifts; give more shifts or cooks");
      return faults;
    }
    for (Work.Meeting meeting : work.meetings()) {
      if (isWorthwhile(faults) && !isPossible(work.links(meeting, tolerance))) {
        long least = least(tolerance, apart -> work.links(meeting, apart));
        faults.add(
            FaultCode.IMPOSSIBLE,
            task(meeting.one()).pointer(),
            "`"
                + task(meeting.one()).id()
                + "` and `"
                + task(meeting.other()).id()
                + "` cannot finish within "
                + Words.span(tolerance)
                + " of each other; the least is "
                + Words.span(least)
                + " apart"
                + reason(meeting));
      }
    }
    for (Work.Wait wait : work.waits()) {
      if (isWorthwhile(faults) && !isPossible(List.of(work.link(wait)))) {
        long least =
            least(
                wait.most(),
                most -> List.of(work.link(new Work.Wait(wait.first(), wait.second(), most))));
        faults.add(
            FaultCode.IMPOSSIBLE,
            task(wait.first()).pointer(),
            "`"
                + task(wait.second()).id()
                + "` cannot start within "
                + Words.span(wait.most())
                + " of the end of `"
                + task(wait.first()).id()
                + "`; the least is "
                + Words.span(least));
      }
    }
    return faults;
  }

  /** Many stages are tried less often, so that a caller is told soon. */
  private boolean isWorthwhile(Faults faults) {
    return faults.size() < MOST_TOLD && tries > TRIES_FOR_ONE;
  }

  private static Refusal refusal(Faults faults) {
    try {
      faults.refuseIfAny();
      throw new IllegalStateException("a conflict without a fault");
    } catch (Refusal refusal) {
      return refusal;
    }
  }

  private String reason(Work.Meeting meeting) {
    boolean hands = task(meeting.one()).hands() && task(meeting.other()).hands();
    return hands ? " (both need a cook's hands all the time)" : "";
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
  private long least(long impossible, LongFunction<List<Link>> links) {
    long low = impossible / SECOND;
    long high = Planner.length(network) / SECOND + 1;
    while (low + 1 < high) {
      long middle = (low + high) / 2;
      if (isPossible(links.apply(middle * SECOND))) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return high * SECOND;
  }

  /** Whether there is a plan; where the search gives up, there may be one. */
  private boolean isPossible(List<Link> links) {
    Network asked = network.with(links);
    Planner planner = Planner.quick();
    tries--;
    try {
      return (backward ? planner.latest(asked, 0) : planner.earliest(asked)) != null;
    } catch (Refusal tooHard) {
      return true;
    }
  }
}
