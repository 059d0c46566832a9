package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.plugin.timeline.network.Link;
import tamis.plugin.timeline.network.Network;
import tamis.plugin.timeline.network.Passes;
import tamis.plugin.timeline.network.PoolOrder;

/** A plan with what each stage has to spare in it, stations and hands counted. */
final class Steps {
  private final Network network;
  private final List<Task> tasks;
  private final long[] planned;
  private final long[] early;
  private final long[] late;
  private final List<PoolOrder.Turn> turns;
  private final long start;

  private Steps(
      Network network,
      List<Task> tasks,
      long[] planned,
      long[] early,
      long[] late,
      List<PoolOrder.Turn> turns) {
    this.network = network;
    this.tasks = tasks;
    this.planned = planned;
    this.early = early;
    this.late = late;
    this.turns = turns;
    this.start = Network.start(planned);
  }

  /**
   * The plan in the order that {@code starts} has at stations and in hands.
   *
   * @param lateAsCan whether each stage comes as late as it can, or as early
   */
  static Steps of(Network network, List<Task> tasks, long[] starts, boolean lateAsCan) {
    return of(network, tasks, starts, lateAsCan, network.finish(starts));
  }

  /**
   * The same with time to spare at the end.
   *
   * @param wanted latest end of all, if the plan ends earlier
   */
  static Steps of(
      Network network, List<Task> tasks, long[] starts, boolean lateAsCan, long wanted) {
    List<PoolOrder.Turn> turns = PoolOrder.of(network, starts);
    Network ordered = network.with(turns.stream().map(PoolOrder.Turn::link).toList());
    long begin = Network.start(starts);
    long[] notBefore = new long[starts.length];
    long[] notAfter = new long[starts.length];
    for (int i = 0; i < starts.length; i++) {
      notBefore[i] = Math.max(begin, network.notBefore(i));
      notAfter[i] = network.notAfter(i);
    }
    Passes passes = new Passes(ordered.between(notBefore, notAfter));
    long @Nullable [] early = passes.earliest();
    long @Nullable [] late = passes.latest(Math.max(wanted, network.finish(starts)));
    long[] earliest = early == null ? starts : early;
    long[] latest = late == null ? starts : late;
    return new Steps(network, tasks, lateAsCan ? latest : earliest, earliest, latest, turns);
  }

  long start() {
    return start;
  }

  long finish() {
    return network.finish(planned);
  }

  long startOf(int task) {
    return planned[task];
  }

  List<PoolOrder.Turn> turns() {
    return turns;
  }

  boolean isCritical(int task) {
    return late[task] <= early[task];
  }

  /** Tasks in the order in which they start. */
  List<Integer> inOrder() {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < tasks.size(); i++) {
      order.add(i);
    }
    order.sort(Comparator.comparingLong((Integer i) -> planned[i]).thenComparingInt(i -> i));
    return order;
  }

  /** Pools in which one critical stage waits for another and nothing else keeps it. */
  Set<String> boundBy() {
    Set<List<Integer>> waited = new HashSet<>();
    for (Link link : network.links()) {
      if (link.lag() >= network.length(link.from())) {
        waited.add(List.of(link.from(), link.to()));
      }
    }
    Set<String> names = new TreeSet<>();
    for (PoolOrder.Turn turn : turns) {
      Link link = turn.link();
      boolean tight = planned[link.from()] + link.lag() == planned[link.to()];
      boolean critical = isCritical(link.from()) && isCritical(link.to());
      if (tight && critical && !waited.contains(List.of(link.from(), link.to()))) {
        names.add(turn.pool().name());
      }
    }
    return names;
  }

  /** What is shown of one task. */
  Step step(int i, @Nullable Clock clock, @Nullable Boolean started, @Nullable Held held) {
    Task task = tasks.get(i);
    long length = network.length(i);
    return new Step(
        task.id(),
        task.formula(),
        task.stage() == null ? null : task.stage().id(),
        task.title(),
        task.station(),
        task.hands(),
        Task.minutes(length),
        clock == null ? null : clock.local(planned[i]),
        clock == null ? null : clock.local(planned[i] + length),
        Task.minutes(early[i] - start),
        Task.minutes(early[i] + length - start),
        Task.minutes(late[i] - start),
        Task.minutes(late[i] + length - start),
        Task.minutes(late[i] - early[i]),
        isCritical(i),
        started,
        held == null ? null : held.minutes(),
        held == null ? null : held.advice());
  }

  /** How long something waits, and how it is held. */
  record Held(double minutes, String advice) {}
}
