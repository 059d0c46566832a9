package tamis.plugin.balancing;

/**
 * One side of one bound, as a row of the programme: amounts times shares, at least or at most the
 * limit. Shares are of the reference mass.
 *
 * @param words for a person, without the limit: {@code fat at least}
 * @param pointer where it stands in the request
 * @param amounts what a share of one brings of each ingredient
 * @param relative whether the limit is of the mix as it comes out, not a fixed amount
 * @param unit of the limit
 * @param step one unit, by which it is relaxed
 * @param single the one ingredient that it is of, or -1
 */
@SuppressWarnings("ArrayRecordComponent") // one and the same array stands for one row
record Limit(
    String words,
    String pointer,
    Side side,
    double limit,
    double[] amounts,
    boolean relative,
    String unit,
    double step,
    int single) {

  /** Below this a bound counts as touched: far finer than any scale or analysis. */
  static final double TOUCHED = 1e-6;

  boolean isTouched(double[] shares) {
    return Math.abs(slack(shares)) <= TOUCHED * Math.max(1, Math.abs(limit));
  }

  Limit at(double other) {
    return new Limit(words, pointer, side, other, amounts, relative, unit, step, single);
  }

  /** Further out by some of its unit, but never below nothing. */
  Limit relaxedBy(double by) {
    return at(side == Side.LOW ? Math.max(0, limit - by) : limit + by);
  }

  /** The row's factor of one ingredient. */
  double factor(int item) {
    return relative ? amounts[item] - limit : amounts[item];
  }

  double right() {
    return relative ? 0 : limit;
  }

  /** How far it is kept, in its unit; negative if it is not. */
  double slack(double[] shares) {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < shares.length; i++) {
      sum += amounts[i] * shares[i];
      all += shares[i];
    }
    double reached = relative ? sum / Math.max(all, 1e-12) : sum;
    return side == Side.LOW ? reached - limit : limit - reached;
  }
}
