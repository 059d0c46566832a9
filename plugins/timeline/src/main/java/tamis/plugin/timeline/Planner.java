package tamis.plugin.timeline;

import org.jspecify.annotations.Nullable;

/** Finds the plan that ends first. */
final class Planner {
  private Planner() {}

  /** The plan that ends first, or null if none keeps all links and bounds. */
  static @Nullable Outcome earliest(Network network) {
    long @Nullable [] free = new Passes(network).earliest();
    if (free == null) {
      return null;
    }
    return new Outcome(free, network.finish(free), network.pools().isEmpty());
  }

  /** The plan that starts last and ends by {@code finish}, or null if there is none. */
  static @Nullable Outcome latest(Network network, long finish) {
    @Nullable Outcome turned = earliest(network.mirrored(finish));
    return turned == null
        ? null
        : new Outcome(network.mirrored(turned.starts()), turned.bound(), turned.isBest());
  }
}
