package tamis.plugin.timeline.network;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * Earliest and latest starts under a growing list of links, for a search that goes back. What
 * follows from a link is worked out when it is added.
 */
final class Windows {
  private final Network network;
  private final Adjacency out;
  private final Adjacency in;
  private long[] early;
  private long[] late;
  private long steps;
  private final long mostSteps;

  /** What to go back to. */
  static final class Mark {
    private final long[] early;
    private final long[] late;

    private Mark(long[] early, long[] late) {
      this.early = early;
      this.late = late;
    }
  }

  /** Links of each by its one end, those added last to go first. */
  private static final class Adjacency {
    private final int[][] ends;
    private final long[][] lags;
    private final int[] counts;

    Adjacency(int size) {
      ends = new int[size][4];
      lags = new long[size][4];
      counts = new int[size];
    }

    void add(int at, int end, long lag) {
      int count = counts[at]++;
      if (count == ends[at].length) {
        ends[at] = Arrays.copyOf(ends[at], 2 * count);
        lags[at] = Arrays.copyOf(lags[at], 2 * count);
      }
      ends[at][count] = end;
      lags[at][count] = lag;
    }
  }

  /**
   * @param early starts that hold the network's own links
   * @param mostSteps after so many steps {@link #isSpent()} is true and nothing is worked out more
   */
  Windows(Network network, long[] early, long mostSteps) {
    this.network = network;
    this.early = early.clone();
    this.late = new long[early.length];
    this.out = new Adjacency(early.length);
    this.in = new Adjacency(early.length);
    this.mostSteps = mostSteps;
    for (int i = 0; i < late.length; i++) {
      late[i] = network.notAfter(i);
    }
    for (Link link : network.links()) {
      out.add(link.from(), link.to(), link.lag());
      in.add(link.to(), link.from(), link.lag());
    }
  }

  long early(int i) {
    return early[i];
  }

  long late(int i) {
    return late[i];
  }

  long[] earliest() {
    return early.clone();
  }

  boolean isSpent() {
    return steps > mostSteps;
  }

  void count(long more) {
    steps += more;
  }

  Mark mark() {
    return new Mark(early.clone(), late.clone());
  }

  void back(Mark mark) {
    early = mark.early;
    late = mark.late;
  }

  /** All ends by {@code finish}; false if that cannot be. */
  boolean endBy(long finish) {
    Deque<Integer> changed = new ArrayDeque<>();
    for (int i = 0; i < late.length; i++) {
      long last = network.lastStart(i, Math.min(late[i], finish - network.length(i)));
      if (last < late[i]) {
        late[i] = last;
        changed.add(i);
      }
      if (early[i] > late[i]) {
        return false;
      }
    }
    return pull(changed);
  }

  /** Adds a link; false if it cannot hold with the others. */
  boolean add(Link link) {
    out.add(link.from(), link.to(), link.lag());
    in.add(link.to(), link.from(), link.lag());
    return push(new ArrayDeque<>(List.of(link.from())))
        && pull(new ArrayDeque<>(List.of(link.to())));
  }

  /** Takes back the link that was added last; times are taken back by {@link #back}. */
  void forget(Link link) {
    out.counts[link.from()]--;
    in.counts[link.to()]--;
  }

  private boolean push(Deque<Integer> changed) {
    while (!changed.isEmpty()) {
      int i = changed.remove();
      for (int k = 0; k < out.counts[i]; k++) {
        int end = out.ends[i][k];
        long time = early[i] + out.lags[i][k];
        steps++;
        if (time > early[end]) {
          early[end] = network.nextStart(end, time);
          if (early[end] > late[end] || isSpent()) {
            return false;
          }
          changed.add(end);
        }
      }
    }
    return true;
  }

  private boolean pull(Deque<Integer> changed) {
    while (!changed.isEmpty()) {
      int i = changed.remove();
      for (int k = 0; k < in.counts[i]; k++) {
        int end = in.ends[i][k];
        long time = late[i] - in.lags[i][k];
        steps++;
        if (time < late[end]) {
          late[end] = network.lastStart(end, time);
          if (early[end] > late[end] || isSpent()) {
            return false;
          }
          changed.add(end);
        }
      }
    }
    return true;
  }
}
