package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;

/**
 * A measure with what it weighs in the order of differences.
 *
 * @param distance in widths
 * @param test of the outcomes, or null if too few trials tell
 * @param separation from 0 to 1, or null without a test
 * @param kept figures of trials that were kept
 * @param wrong figures of trials that went wrong
 */
record Weighted(
    Measured measured,
    double distance,
    @Nullable RankTest test,
    @Nullable Double separation,
    int kept,
    int wrong) {
  static final int FEWEST = 3;

  /** What separates no better than so often by chance is named as no cause. */
  static final double CHANCE = 0.1;

  /** Where it is not known whether a difference goes with the outcome, it counts half. */
  private static final double NOT_KNOWN = 0.5;

  static Weighted of(Measured measured, TrialBook book) {
    double[] kept = compared(measured, book, Outcome.KEPT);
    double[] wrong = compared(measured, book, Outcome.GONE_WRONG);
    @Nullable RankTest test = null;
    @Nullable Double separation = null;
    boolean tells = measured.isNumeric() || Categories.of(measured).isTwo();
    if (Math.min(kept.length, wrong.length) >= FEWEST && tells) {
      boolean outside = measured.against() != Against.EACH_OTHER;
      test = outside ? RankTest.above(kept, wrong) : RankTest.apart(kept, wrong);
      double apart = 2 * test.superiority() - 1;
      separation = outside ? Math.max(0, apart) : Math.abs(apart);
    }
    return new Weighted(measured, measured.distance(), test, separation, kept.length, wrong.length);
  }

  private static double[] compared(Measured measured, TrialBook book, Outcome outcome) {
    Categories categories = Categories.of(measured);
    return measured.figures().entrySet().stream()
        .filter(one -> book.outcome(one.getKey()) == outcome)
        .mapToDouble(
            one ->
                measured.isNumeric()
                    ? measured.compared(one.getValue())
                    : categories.place(one.getValue()))
        .toArray();
  }

  double weight() {
    return distance * (separation == null ? NOT_KNOWN : separation);
  }

  /** A look that no figures could make a cause of is no look (Tarone 1990). */
  boolean isLook() {
    return !measured.effect() && test != null && test.least() <= CHANCE;
  }

  boolean goesWithTheOutcome() {
    return isLook() && test != null && test.chance() <= CHANCE && weight() > 0;
  }
}
