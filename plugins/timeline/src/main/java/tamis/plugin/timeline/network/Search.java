package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Branch and bound for the plan that ends first. At every node each stage has its earliest and
 * latest start; of stages that clash, one is put before the other, each way in turn. When the
 * earliest starts clash nowhere, they are a plan. Exact unless the steps run out; it counts steps
 * and reads no clock, so that equal inputs give equal plans.
 */
final class Search {
  private final Network network;
  private final Windows windows;
  private final Clashes clashes;
  private final boolean[][] ordered;
  private final List<Link> trail = new ArrayList<>();
  private long end;
  private long @Nullable [] found;

  /**
   * @param early the earliest starts by links alone
   * @param before only plans that end before this are looked for
   */
  Search(Network network, long[] early, long before, long mostSteps) {
    this.network = network;
    this.windows = new Windows(network, early, mostSteps);
    this.clashes = new Clashes(network, windows);
    this.ordered = new boolean[network.size()][network.size()];
    this.end = before;
    for (Link link : network.links()) {
      ordered[link.from()][link.to()] |= link.lag() >= network.length(link.from());
    }
  }

  /** The best plan that ends in time, or null if none was found. */
  long @Nullable [] run() {
    visit();
    return found;
  }

  /** Whether all was tried, so that what was found is the best. */
  boolean isComplete() {
    return !windows.isSpent();
  }

  /** Whether it follows, without trying, that no plan ends in time. */
  boolean isRefuted() {
    return !tighten() && !windows.isSpent();
  }

  private void visit() {
    if (windows.isSpent() || !tighten()) {
      return;
    }
    List<Integer> clash = clashes.tightest();
    if (clash.isEmpty()) {
      found = windows.earliest();
      end = network.finish(found);
      return;
    }
    Windows.Mark mark = windows.mark();
    for (Link choice : choices(clash)) {
      int depth = trail.size();
      if (add(choice)) {
        visit();
      }
      undo(depth);
      windows.back(mark);
      mark = windows.mark();
      if (windows.isSpent()) {
        return;
      }
    }
  }

  private boolean add(Link link) {
    trail.add(link);
    ordered[link.from()][link.to()] = true;
    return windows.add(link);
  }

  private void undo(int depth) {
    while (trail.size() > depth) {
      Link link = trail.remove(trail.size() - 1);
      windows.forget(link);
      ordered[link.from()][link.to()] = false;
    }
  }

  /** Draws what follows; false if there is no plan here. */
  private boolean tighten() {
    if (!windows.endBy(end - 1)) {
      return false;
    }
    boolean changed = true;
    while (changed) {
      changed = false;
      for (Pool pool : network.pools()) {
        if (!clashes.fits(pool)) {
          return false;
        }
        if (pool.capacity() == 1) {
          int before = trail.size();
          if (!settle(pool)) {
            return false;
          }
          changed |= trail.size() > before;
        }
      }
    }
    return true;
  }

  /** Of each two that only one order is left to, puts them in it. */
  private boolean settle(Pool pool) {
    List<Integer> members = pool.members();
    windows.count((long) members.size() * members.size() / 4);
    for (int a = 0; a < members.size(); a++) {
      for (int b = a + 1; b < members.size(); b++) {
        int one = members.get(a);
        int other = members.get(b);
        if (isSettled(one, other)) {
          continue;
        }
        boolean oneFirst = room(one, other) >= 0;
        boolean otherFirst = room(other, one) >= 0;
        if (!oneFirst && !otherFirst) {
          return false;
        }
        if (oneFirst != otherFirst && !add(oneFirst ? turn(one, other) : turn(other, one))) {
          return false;
        }
      }
    }
    return true;
  }

  private boolean isSettled(int one, int other) {
    return ordered[one][other]
        || ordered[other][one]
        || network.length(one) == 0
        || network.length(other) == 0;
  }

  /** How much is to spare if the first ends before the second starts; negative: impossible. */
  private long room(int first, int second) {
    return windows.late(second) - windows.early(first) - network.length(first);
  }

  private Link turn(int first, int second) {
    return new Link(first, second, network.length(first));
  }

  /** Ways out of a clash, those first that leave most room. */
  private List<Link> choices(List<Integer> clash) {
    List<Link> choices = new ArrayList<>();
    for (int first : clash) {
      for (int second : clash) {
        if (first != second && room(first, second) >= 0) {
          choices.add(turn(first, second));
        }
      }
    }
    choices.sort(Comparator.comparingLong((Link link) -> -room(link.from(), link.to())));
    return choices;
  }
}
