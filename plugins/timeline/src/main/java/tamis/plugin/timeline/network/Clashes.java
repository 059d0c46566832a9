package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Where earliest starts ask more of a station, or of the cooks, than there is. */
final class Clashes {
  private final Network network;
  private final Windows windows;

  Clashes(Network network, Windows windows) {
    this.network = network;
    this.windows = windows;
  }

  /**
   * Whether the work that must lie between two moments can: false proves that there is no plan.
   * Hands count only while a shift lasts.
   */
  boolean fits(Pool pool) {
    List<Integer> members = new ArrayList<>(pool.members());
    members.sort(Comparator.comparingLong(this::lastEnd));
    boolean attended = members.stream().allMatch(network::attended);
    WorkingTime time = attended ? network.working() : WorkingTime.always();
    windows.count((long) members.size() * members.size() / 4);
    for (int begin : members) {
      long from = windows.early(begin);
      long work = 0;
      for (int member : members) {
        if (windows.early(member) >= from) {
          work += network.length(member);
          if (work > room(pool, time, from, lastEnd(member))) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private static long room(Pool pool, WorkingTime time, long from, long to) {
    long between = time.between(from, to);
    return between > WorkingTime.NEVER / pool.capacity()
        ? WorkingTime.NEVER
        : between * pool.capacity();
  }

  private long lastEnd(int member) {
    return windows.late(member) + network.length(member);
  }

  private long end(int member) {
    return windows.early(member) + network.length(member);
  }

  /** One more than fit, of the clash whose order is least free; empty if nothing clashes. */
  List<Integer> tightest() {
    List<Integer> tightest = List.of();
    long least = Long.MAX_VALUE;
    for (Pool pool : network.pools()) {
      windows.count((long) pool.members().size() * pool.members().size() / 4);
      for (int member : pool.members()) {
        List<Integer> together = together(pool, member);
        if (together.size() <= pool.capacity()) {
          continue;
        }
        together.sort(Comparator.comparingLong((Integer i) -> slack(i)));
        List<Integer> clash = together.subList(0, pool.capacity() + 1);
        long free = clash.stream().mapToLong(this::slack).sum() / clash.size();
        if (free < least) {
          least = free;
          tightest = List.copyOf(clash);
        }
      }
    }
    return tightest;
  }

  private long slack(int member) {
    return windows.late(member) - windows.early(member);
  }

  /** Members that go on when this one starts. */
  private List<Integer> together(Pool pool, int member) {
    List<Integer> together = new ArrayList<>();
    long moment = windows.early(member);
    if (network.length(member) == 0) {
      return together;
    }
    for (int other : pool.members()) {
      if (windows.early(other) <= moment && moment < end(other)) {
        together.add(other);
      }
    }
    return together;
  }
}
