package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import org.jspecify.annotations.Nullable;

/**
 * A good plan without search: one block after another, by priority, as early as it fits. Work that
 * holds each other goes as one block whose inner times are found first.
 */
final class ListPlan {
  private static final long BLOCK_STEPS = 2_000_000;
  private static final int MOST_SHIFTS = 20_000;

  private final Network network;
  private final Blocks blocks;
  private final long[] offsets;
  private final List<List<Integer>> poolsOf = new ArrayList<>();
  private final boolean possible;
  private boolean refuted;

  ListPlan(Network network) {
    this.network = network;
    this.blocks = new Blocks(network);
    this.offsets = new long[network.size()];
    for (int i = 0; i < network.size(); i++) {
      poolsOf.add(new ArrayList<>(2));
    }
    for (int p = 0; p < network.pools().size(); p++) {
      for (int member : network.pools().get(p).members()) {
        poolsOf.get(member).add(p);
      }
    }
    boolean all = true;
    for (int block = 0; block < blocks.count() && all; block++) {
      all = blocks.members(block).size() == 1 || arrange(blocks.members(block));
    }
    this.possible = all;
  }

  /** Inner times of a block, as short as can be. */
  private boolean arrange(List<Integer> members) {
    Network inner = network.only(members).anyTime();
    long @Nullable [] early = new Passes(inner).earliest();
    if (early == null) {
      refuted = true;
      return false;
    }
    Search search = new Search(inner, early, Planner.horizon(inner), BLOCK_STEPS);
    long @Nullable [] best = search.run();
    if (best == null) {
      refuted = search.isComplete();
      return false;
    }
    for (int k = 0; k < members.size(); k++) {
      offsets[members.get(k)] = best[k];
    }
    return true;
  }

  /** Whether it was proved that some block cannot be, even with all stations to itself. */
  boolean isRefuted() {
    return refuted;
  }

  /** The plan by priorities, the smallest first; null if a block fits nowhere. */
  long @Nullable [] by(long[] priority) {
    if (!possible) {
      return null;
    }
    int[] waiting = new int[blocks.count()];
    List<List<Link>> out = new ArrayList<>();
    for (int i = 0; i < blocks.count(); i++) {
      out.add(new ArrayList<>());
    }
    for (Link link : network.links()) {
      if (blocks.of(link.from()) != blocks.of(link.to())) {
        waiting[blocks.of(link.to())]++;
        out.get(blocks.of(link.from())).add(link);
      }
    }
    long[] first = new long[blocks.count()];
    for (int block = 0; block < first.length; block++) {
      first[block] = blocks.members(block).stream().mapToLong(i -> priority[i]).min().orElseThrow();
    }
    PriorityQueue<Integer> ready =
        new PriorityQueue<>(
            Comparator.comparingLong((Integer b) -> first[b]).thenComparingInt(b -> b));
    for (int block = 0; block < waiting.length; block++) {
      if (waiting[block] == 0) {
        ready.add(block);
      }
    }
    return place(ready, waiting, out);
  }

  private long @Nullable [] place(
      PriorityQueue<Integer> ready, int[] waiting, List<List<Link>> out) {
    long[] starts = new long[network.size()];
    long[] bounds = new long[network.size()];
    for (int i = 0; i < bounds.length; i++) {
      bounds[i] = network.notBefore(i);
    }
    List<Profile> profiles =
        network.pools().stream().map(pool -> new Profile(pool.capacity())).toList();
    while (!ready.isEmpty()) {
      int block = ready.remove();
      if (!place(blocks.members(block), bounds, starts, profiles)) {
        return null;
      }
      for (Link link : out.get(block)) {
        bounds[link.to()] = Math.max(bounds[link.to()], starts[link.from()] + link.lag());
        if (--waiting[blocks.of(link.to())] == 0) {
          ready.add(blocks.of(link.to()));
        }
      }
    }
    return starts;
  }

  private boolean place(
      List<Integer> members, long[] bounds, long[] starts, List<Profile> profiles) {
    long time = -WorkingTime.NEVER;
    for (int member : members) {
      time = Math.max(time, bounds[member] - offsets[member]);
    }
    int shifts = 0;
    for (int k = 0; k < members.size(); k++) {
      int member = members.get(k);
      long wanted = time + offsets[member];
      long start = network.nextStart(member, wanted);
      for (int pool : poolsOf.get(member)) {
        start = Math.max(start, profiles.get(pool).fit(start, network.length(member)));
      }
      if (start > network.notAfter(member) || shifts > MOST_SHIFTS) {
        return false;
      }
      if (start == wanted) {
        starts[member] = start;
        change(member, start, profiles, 1);
      } else { // all members anew, from the later time
        for (int placed : members.subList(0, k)) {
          change(placed, starts[placed], profiles, -1);
        }
        time += start - wanted;
        shifts++;
        k = -1;
      }
    }
    return true;
  }

  private void change(int member, long start, List<Profile> profiles, int places) {
    for (int pool : poolsOf.get(member)) {
      profiles.get(pool).take(start, network.length(member), places);
    }
  }
}
