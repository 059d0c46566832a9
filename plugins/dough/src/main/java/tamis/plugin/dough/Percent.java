package tamis.plugin.dough;

import org.jspecify.annotations.Nullable;

/** Baker's percent. */
final class Percent {
  private Percent() {}

  /** Percent of the flour, or null if there is no flour. */
  static @Nullable Double of(double grams, double flour) {
    return flour > 0 ? (Double) (100 * grams / flour) : null;
  }
}
