package tamis.plugin.trials;

import java.util.Arrays;

/**
 * Whether one group of figures lies above another: the exact permutation test of the rank sum, with
 * middle ranks for figures that are equal (Wilcoxon 1945; Lehmann, Nonparametrics, 1975). All ways
 * to deal the ranks out to the two groups are counted, so few trials are no obstacle. Of figures
 * that are only yes or no it is Fisher's exact test.
 *
 * @param superiority how often a figure of the second group lies above one of the first, equal ones
 *     counted half; 0.5 if there is nothing between them
 * @param chance part of all ways to deal that separates the groups as far or further
 * @param least the smallest chance that figures with these ties can come to
 */
record RankTest(double superiority, double chance, double least) {
  /** Figures nearer than this are equal: far below what any instrument reads. */
  private static final double ROUNDING = 1e9;

  /** Whether the second group lies above the first. */
  static RankTest above(double[] first, double[] second) {
    return of(first, second, false);
  }

  /** Whether the second group lies above or below the first. */
  static RankTest apart(double[] first, double[] second) {
    return of(first, second, true);
  }

  private static RankTest of(double[] first, double[] second, boolean bothSides) {
    int[] ranks = doubledRanks(first, second);
    int size = second.length;
    int observed = Arrays.stream(ranks, first.length, ranks.length).sum();
    int mean = size * (ranks.length + 1);
    double[] ways = ways(ranks, size);
    int[] sorted = ranks.clone();
    Arrays.sort(sorted);
    int highest = Arrays.stream(sorted, sorted.length - size, sorted.length).sum();
    int lowest = Arrays.stream(sorted, 0, size).sum();
    double chance =
        bothSides ? beyond(ways, mean, Math.abs(observed - mean)) : from(ways, observed);
    int furthest = Math.max(highest - mean, mean - lowest);
    double least = bothSides ? beyond(ways, mean, furthest) : from(ways, highest);
    double wins = (observed - size * (size + 1.0)) / 2;
    return new RankTest(wins / ((double) first.length * size), chance, least);
  }

  /** Twice the ranks, so that middle ranks are whole; those of the first group come first. */
  private static int[] doubledRanks(double[] first, double[] second) {
    double[] all = new double[first.length + second.length];
    for (int i = 0; i < all.length; i++) {
      double figure = i < first.length ? first[i] : second[i - first.length];
      all[i] = Math.rint(figure * ROUNDING) / ROUNDING;
    }
    int[] ranks = new int[all.length];
    for (int i = 0; i < all.length; i++) {
      int below = 0;
      int equal = 0;
      for (double other : all) {
        below += other < all[i] ? 1 : 0;
        equal += other == all[i] ? 1 : 0;
      }
      ranks[i] = 2 * below + equal + 1;
    }
    return ranks;
  }

  /** The part of all ways to choose {@code size} of the ranks that comes to each sum. */
  private static double[] ways(int[] ranks, int size) {
    int most = Arrays.stream(ranks).sum();
    double[][] counted = new double[size + 1][most + 1];
    counted[0][0] = 1;
    for (int rank : ranks) {
      for (int taken = size; taken > 0; taken--) {
        for (int sum = most; sum >= rank; sum--) {
          counted[taken][sum] += counted[taken - 1][sum - rank];
        }
      }
    }
    double all = Arrays.stream(counted[size]).sum();
    return Arrays.stream(counted[size]).map(count -> count / all).toArray();
  }

  private static double from(double[] ways, int least) {
    return Math.min(1, Arrays.stream(ways, least, ways.length).sum());
  }

  private static double beyond(double[] ways, int mean, int distance) {
    double sum = 0;
    for (int i = 0; i < ways.length; i++) {
      sum += Math.abs(i - mean) >= distance ? ways[i] : 0;
    }
    return Math.min(1, sum);
  }
}
