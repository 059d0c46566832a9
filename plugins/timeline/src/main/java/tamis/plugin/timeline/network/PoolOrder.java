package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a plan says of who comes after whom at a station or in a cook's hands. As links these keep
 * every plan that obeys them within the capacities: what is not linked goes on at the same time in
 * this plan, and so many fit.
 */
public final class PoolOrder {
  private PoolOrder() {}

  /** Two in one pool, the second after the first. */
  public record Turn(Pool pool, Link link) {}

  public static List<Turn> of(Network network, long[] starts) {
    List<Turn> turns = new ArrayList<>();
    for (Pool pool : network.pools()) {
      List<Integer> byFinish =
          new ArrayList<>(pool.members().stream().filter(i -> network.length(i) > 0).toList());
      byFinish.sort(
          Comparator.comparingLong((Integer i) -> starts[i] + network.length(i))
              .thenComparingInt(i -> i));
      List<Integer> byStart = new ArrayList<>(byFinish);
      byStart.sort(Comparator.comparingLong((Integer i) -> starts[i]).thenComparingInt(i -> i));
      add(network, starts, pool, byFinish, byStart, turns);
    }
    return turns;
  }

  /** Only links that no chain of others makes needless. */
  private static void add(
      Network network,
      long[] starts,
      Pool pool,
      List<Integer> byFinish,
      List<Integer> byStart,
      List<Turn> turns) {
    int ended = 0;
    long lastStart = -WorkingTime.NEVER;
    for (int next : byStart) {
      while (ended < byFinish.size() && finish(network, starts, byFinish, ended) <= starts[next]) {
        lastStart = Math.max(lastStart, starts[byFinish.get(ended)]);
        ended++;
      }
      for (int k = ended - 1; k >= 0; k--) {
        int before = byFinish.get(k);
        if (starts[before] + network.length(before) <= lastStart) {
          break;
        }
        turns.add(new Turn(pool, new Link(before, next, network.length(before))));
      }
    }
  }

  private static long finish(Network network, long[] starts, List<Integer> byFinish, int k) {
    int work = byFinish.get(k);
    return starts[work] + network.length(work);
  }
}
