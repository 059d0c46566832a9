package tamis.plugin.trials;

import java.util.Comparator;

/** Orders that do not depend on the order in which trials are asked for. */
final class TrialOrder {
  static final Comparator<Measured.Key> BY_WORDS =
      Comparator.comparing(Measured.Key::stage)
          .thenComparing(Measured.Key::measure)
          .thenComparing(Measured.Key::of)
          .thenComparing(Measured.Key::unit);

  private TrialOrder() {}

  /** The heaviest first; those alike in the order of work. */
  static Comparator<Weighted> byWeight(TrialBook book) {
    return Comparator.comparingDouble((Weighted one) -> -one.weight())
        .thenComparingDouble(one -> -one.distance())
        .thenComparingInt(one -> book.order(one.measured().key().stage()))
        .thenComparing(one -> one.measured().key(), BY_WORDS);
  }
}
