package tamis.plugin.timeline.network;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The forward and the backward pass of the critical-path method. Links may also say how late
 * something starts at most, so the passes are repeated until nothing changes; without such links
 * one pass does.
 */
public final class Passes {
  private final Network network;
  private final int[] order;
  private final int[][] out;
  private final int[][] in;
  private final Link[] links;
  private final long mostSweeps;

  public Passes(Network network) {
    this.network = network;
    this.links = network.links().toArray(Link[]::new);
    this.out = adjacent(network.size(), links, true);
    this.in = adjacent(network.size(), links, false);
    this.order = order();
    this.mostSweeps = network.working().isAlways() ? network.size() + 2L : 100_000L;
  }

  private static int[][] adjacent(int size, Link[] links, boolean outgoing) {
    int[] counts = new int[size];
    for (Link link : links) {
      counts[outgoing ? link.from() : link.to()]++;
    }
    int[][] lists = new int[size][];
    for (int i = 0; i < size; i++) {
      lists[i] = new int[counts[i]];
    }
    for (int k = links.length - 1; k >= 0; k--) {
      int end = outgoing ? links[k].from() : links[k].to();
      lists[end][--counts[end]] = k;
    }
    return lists;
  }

  /** Work after what it waits for, as far as that is no circle. */
  private int[] order() {
    int size = network.size();
    int[] waiting = new int[size];
    for (Link link : links) {
      waiting[link.to()] += isForward(link) ? 1 : 0;
    }
    Deque<Integer> ready = new ArrayDeque<>();
    for (int i = 0; i < size; i++) {
      if (waiting[i] == 0) {
        ready.add(i);
      }
    }
    int[] found = new int[size];
    boolean[] seen = new boolean[size];
    int count = 0;
    while (!ready.isEmpty()) {
      int work = ready.remove();
      seen[work] = true;
      found[count++] = work;
      for (int k : out[work]) {
        if (isForward(links[k]) && --waiting[links[k].to()] == 0) {
          ready.add(links[k].to());
        }
      }
    }
    for (int i = 0; i < size; i++) {
      if (!seen[i]) {
        found[count++] = i;
      }
    }
    return found;
  }

  private static boolean isForward(Link link) {
    return link.lag() > 0 || (link.lag() == 0 && link.from() < link.to());
  }

  /** The earliest start of each, or null if the links cannot all hold. */
  public long @Nullable [] earliest() {
    long[] starts = new long[network.size()];
    Arrays.setAll(starts, network::notBefore);
    boolean changed = true;
    for (long sweep = 0; changed; sweep++) {
      changed = false;
      for (int work : order) {
        long time = starts[work];
        for (int k : in[work]) {
          time = Math.max(time, starts[links[k].from()] + links[k].lag());
        }
        time = network.nextStart(work, time);
        if (time > network.notAfter(work) || sweep > mostSweeps) {
          return null;
        }
        changed |= time != starts[work];
        starts[work] = time;
      }
    }
    return starts;
  }

  /** The latest start of each so that all ends by {@code finish}, or null if it cannot. */
  public long @Nullable [] latest(long finish) {
    long[] starts = new long[network.size()];
    Arrays.setAll(starts, work -> Math.min(network.notAfter(work), finish - network.length(work)));
    boolean changed = true;
    for (long sweep = 0; changed; sweep++) {
      changed = false;
      for (int i = order.length - 1; i >= 0; i--) {
        int work = order[i];
        long time = starts[work];
        for (int k : out[work]) {
          time = Math.min(time, starts[links[k].to()] - links[k].lag());
        }
        time = network.lastStart(work, time);
        if (time < network.notBefore(work) || sweep > mostSweeps) {
          return null;
        }
        changed |= time != starts[work];
        starts[work] = time;
      }
    }
    return starts;
  }

  /** Work in an order in which what is waited for comes first. */
  List<Integer> inOrder() {
    return Arrays.stream(order).boxed().toList();
  }
}
