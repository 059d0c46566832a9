package tamis.plugin.pans;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Weighs every way to take tins by branch and bound: a branch is cut only where nothing better can
 * lie in it. Tins are filled alike, to the share batter ÷ room, which must lie within what each
 * kind that is taken allows. Empty room is compared in whole millilitres: less cannot be measured.
 */
final class TinSearch {
  /** What rounding may cost, as a part. */
  static final double HAIR = 1e-9;

  /**
   * Steps after which the best that was found is given; a shelf of a bakery takes some thousand.
   */
  private static final int MOST_STEPS = 4_000_000;

  private final List<Kind> kinds;
  private final int[] order;
  private final double batter;
  private final boolean fewest;
  private final double[] reach;
  private final double smallest;
  private final double leastHigh;
  private final int[] counts;
  private int @Nullable [] best;
  private int bestTins;
  private long bestEmpty;
  private int steps;

  /**
   * One kind of tin.
   *
   * @param room what one takes at most
   * @param available how many there are
   * @param leastShare how much of its room must be filled
   * @param mostShare how much of its room may be filled
   */
  record Kind(double room, int available, double leastShare, double mostShare) {}

  /**
   * A set of tins.
   *
   * @param counts how many of each kind, in the order that was given
   * @param exact whether every way was weighed
   * @param keepsDepth whether it was searched within the depths
   */
  @SuppressWarnings("ArrayRecordComponent") // read once, right after the search
  record Found(int[] counts, boolean exact, boolean keepsDepth) {
    Found keepingDepth() {
      return new Found(counts, exact, true);
    }
  }

  TinSearch(List<Kind> kinds, double batter, boolean fewest) {
    this.kinds = kinds;
    this.batter = batter;
    this.fewest = fewest;
    this.order =
        IntStream.range(0, kinds.size())
            .boxed()
            .sorted(Comparator.comparingDouble((Integer i) -> -kinds.get(i).room()))
            .mapToInt(i -> i)
            .toArray();
    this.reach = new double[kinds.size() + 1];
    for (int i = kinds.size() - 1; i >= 0; i--) {
      reach[i] = reach[i + 1] + kind(i).room() * kind(i).available();
    }
    this.smallest = kinds.stream().mapToDouble(Kind::room).min().orElse(0);
    this.leastHigh = kinds.stream().mapToDouble(Kind::mostShare).min().orElse(1);
    this.counts = new int[kinds.size()];
  }

  /** The best set, or null if there is none. */
  @Nullable Found best() {
    descend(0, 0, 0, 0, 1);
    return best == null ? null : new Found(best, steps <= MOST_STEPS, false);
  }

  /** Takes of the kinds from the {@code i}th on; low and high bound the share of those taken. */
  private void descend(int i, int tins, double room, double low, double high) {
    if (++steps > MOST_STEPS) {
      return;
    }
    if (tins > 0 && fits(room, low, high)) {
      consider(tins, room);
    }
    if (i == order.length || isHopeless(i, tins, room, low, high)) {
      return;
    }
    Kind kind = kind(i);
    double lowWith = Math.max(low, kind.leastShare());
    double highWith = Math.min(high, kind.mostShare());
    for (int n = lowWith > highWith ? 0 : most(kind, room, lowWith); n >= 0; n--) {
      counts[order[i]] = n;
      if (n == 0) {
        descend(i + 1, tins, room, low, high);
      } else {
        descend(i + 1, tins + n, room + n * kind.room(), lowWith, highWith);
      }
    }
    counts[order[i]] = 0;
  }

  /** More of a kind than this leave the tins too empty, or are never needed. */
  private int most(Kind kind, double room, double low) {
    double wanted = leastHigh > 0 ? batter / Math.min(1, leastHigh) : Double.MAX_VALUE;
    double needed = Math.ceil(Math.max(0, wanted - room) / kind.room() * (1 + HAIR));
    double allowed =
        low > 0 ? Math.floor((batter / low * (1 + HAIR) - room) / kind.room()) : needed;
    return (int) Math.max(0, Math.min(kind.available(), Math.min(needed, allowed)));
  }

  /** Whether nothing better can come of taking more; kinds that come later hold no more. */
  private boolean isHopeless(int i, int tins, double room, double low, double high) {
    double needed = batter / Math.min(1, high);
    if ((room + reach[i]) * (1 + HAIR) < needed) {
      return true;
    }
    if (low > 0 && room > batter / low * (1 + HAIR)) {
      return true;
    }
    if (best == null) {
      return false;
    }
    double more = Math.ceil((needed - room) / kind(i).room() * (1 - HAIR));
    int atLeast = tins + (int) Math.max(1, Math.min(1e9, more));
    long empty = empty(Math.max(needed, room + smallest * (atLeast - tins)));
    return fewest
        ? atLeast > bestTins || (atLeast == bestTins && empty >= bestEmpty)
        : empty > bestEmpty || (empty == bestEmpty && atLeast >= bestTins);
  }

  /** Room that stays empty, in whole millilitres. */
  private long empty(double room) {
    return (long) Math.floor(room - batter + batter * HAIR);
  }

  private boolean fits(double room, double low, double high) {
    double share = batter / room;
    return share <= Math.min(1, high) * (1 + HAIR) && share >= low * (1 - HAIR);
  }

  private void consider(int tins, double room) {
    long empty = empty(room);
    boolean better =
        best == null
            || (fewest
                ? tins < bestTins || (tins == bestTins && empty < bestEmpty)
                : empty < bestEmpty || (empty == bestEmpty && tins < bestTins));
    if (better) {
      best = counts.clone();
      bestTins = tins;
      bestEmpty = empty;
    }
  }

  private Kind kind(int i) {
    return kinds.get(order[i]);
  }
}
