package tamis.plugin.timeline.network;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Finds the plan that ends first: by lists in some usual orders, then, for as many stages as a home
 * or a shop has, by search. Of more it says how much shorter a plan could be at most.
 */
public final class Planner {
  /** So many stages are searched; the plan of more is that of the best list. */
  private static final int MOST_SEARCHED = 120;

  /** So many get all list orders; the plan of more is that of the first order. */
  private static final int MOST_LISTED = 2_000;

  /** A second or two; on equal inputs always the same work. */
  private static final long SEARCH_STEPS = 30_000_000;

  private final long mostSteps;

  private Planner(long mostSteps) {
    this.mostSteps = mostSteps;
  }

  /** One that searches as long as a caller will wait. */
  public static Planner thorough() {
    return new Planner(SEARCH_STEPS);
  }

  /** One that gives up soon. */
  public static Planner quick() {
    return new Planner(SEARCH_STEPS / 30);
  }

  /**
   * The plan that ends first, or null if none keeps all links and bounds.
   *
   * @throws Refusal if none was found within the steps allowed, though there may be one
   */
  public @Nullable Outcome earliest(Network network) {
    long @Nullable [] free = new Passes(network).earliest();
    if (free == null) {
      return null;
    }
    long bound = network.finish(free);
    if (network.pools().isEmpty() || isClashFree(network, free)) {
      return new Outcome(free, bound, true);
    }
    ListPlan plan = new ListPlan(network);
    if (plan.isRefuted()) {
      return null;
    }
    long @Nullable [] listed = listed(network, plan, free);
    if (listed != null && network.finish(listed) == bound) {
      return new Outcome(listed, bound, true);
    }
    return network.size() <= MOST_SEARCHED
        ? searched(network, free, listed)
        : estimated(network, free, listed);
  }

  /** The plan that starts last and ends by {@code finish}, or null if there is none. */
  public @Nullable Outcome latest(Network network, long finish) {
    @Nullable Outcome turned = earliest(network.mirrored(finish));
    return turned == null
        ? null
        : new Outcome(network.mirrored(turned.starts()), turned.bound(), turned.isBest());
  }

  /** No plan that ends first ends after this. */
  static long horizon(Network network) {
    if (!network.working().isAlways()) {
      return WorkingTime.NEVER / 4;
    }
    long sum = 1 + length(network);
    for (Link link : network.links()) {
      sum += Math.max(0, link.lag() - network.length(link.from()));
    }
    long latest = 0;
    for (int i = 0; i < network.size(); i++) {
      latest = Math.max(latest, network.notBefore(i));
    }
    return sum + latest;
  }

  /** All stages one after another. */
  public static long length(Network network) {
    long sum = 0;
    for (int i = 0; i < network.size(); i++) {
      sum += network.length(i);
    }
    return sum;
  }

  private @Nullable Outcome searched(Network network, long[] free, long @Nullable [] listed) {
    long before = listed == null ? horizon(network) : network.finish(listed);
    Search search = new Search(network, free, before, mostSteps);
    long @Nullable [] found = search.run();
    long @Nullable [] best = found == null ? listed : found;
    if (best == null) {
      return search.isComplete() ? null : refuseTooHard(network);
    }
    return search.isComplete()
        ? new Outcome(best, network.finish(best), true)
        : new Outcome(best, refuted(network, free, network.finish(best)), false);
  }

  private Outcome estimated(Network network, long[] free, long @Nullable [] listed) {
    if (listed == null) {
      return refuseTooHard(network);
    }
    long bound = Math.max(network.finish(free), poolBound(network, free));
    return new Outcome(listed, bound, network.finish(listed) == bound);
  }

  private static Outcome refuseTooHard(Network network) {
    throw Refusal.of(
        FaultCode.TOO_MANY,
        "",
        "no order of "
            + network.size()
            + " steps was found that keeps to all longest waits and meetings within the steps of"
            + " search allowed; plan fewer at once, or allow longer waits");
  }

  /** The earliest end that follows from the windows of all stages, between two known bounds. */
  private long refuted(Network network, long[] free, long found) {
    long low = network.finish(free);
    long high = found;
    while (low < high) {
      long middle = low + (high - low) / 2;
      if (new Search(network, free, middle + 1, mostSteps).isRefuted()) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The work of a pool, shared by its places, after the least that comes before and after it. */
  private static long poolBound(Network network, long[] free) {
    long end = network.finish(free);
    long @Nullable [] late = new Passes(network).latest(end);
    long bound = end;
    for (Pool pool : network.pools()) {
      long work = 0;
      long head = Long.MAX_VALUE;
      long tail = Long.MAX_VALUE;
      for (int i : pool.members()) {
        work += network.length(i);
        head = Math.min(head, free[i]);
        tail = late == null ? 0 : Math.min(tail, end - late[i] - network.length(i));
      }
      bound = Math.max(bound, head + work / pool.capacity() + tail);
    }
    return bound;
  }

  private static long @Nullable [] listed(Network network, ListPlan plan, long[] free) {
    long @Nullable [] late = new Passes(network).latest(network.finish(free));
    long[] latest = late == null ? free : late;
    long @Nullable [] best = plan.by(latest);
    if (best == null || network.size() > MOST_LISTED) {
      return best;
    }
    for (long[] priority : priorities(network, free, latest)) {
      best = better(network, best, plan.by(priority));
    }
    return justified(network, plan, best);
  }

  private static List<long[]> priorities(Network network, long[] free, long[] late) {
    long[] byEnd = new long[late.length];
    long[] bySlack = new long[late.length];
    long[] byLength = new long[late.length];
    for (int i = 0; i < late.length; i++) {
      byEnd[i] = late[i] + network.length(i);
      bySlack[i] = late[i] - free[i];
      byLength[i] = -network.length(i);
    }
    return List.of(byEnd, bySlack, free, byLength);
  }

  private static long[] better(Network network, long[] one, long @Nullable [] other) {
    return other != null && network.finish(other) < network.finish(one) ? other : one;
  }

  /** Pushed late and then early again, a plan often becomes shorter. */
  private static long[] justified(Network network, ListPlan plan, long[] starts) {
    long[] best = starts;
    for (int round = 0; round < 3; round++) {
      Network turned = network.mirrored(network.finish(best));
      long @Nullable [] late = new ListPlan(turned).by(turned.mirrored(best));
      if (late == null) {
        return best;
      }
      long[] again = better(network, best, plan.by(network.mirrored(late)));
      if (again == best) {
        return best;
      }
      best = again;
    }
    return best;
  }

  private static boolean isClashFree(Network network, long[] starts) {
    return network.pools().stream()
        .allMatch(
            pool -> {
              Profile profile = new Profile(pool.capacity());
              for (int i : pool.members()) {
                if (profile.fit(starts[i], network.length(i)) != starts[i]) {
                  return false;
                }
                profile.take(starts[i], network.length(i), 1);
              }
              return true;
            });
  }
}
