package tamis.plugin.trials;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One measure of one trial.
 *
 * @param value the reading that counts, or null if it is not a number
 * @param text in words, where a number does not say it
 * @param deviation how far outside the window, or off what is written; null if neither is known
 * @param minute since the trial's start, if it has a time
 * @param last how the stage ended, where that is not the reading that counts
 */
record Figure(
    @Nullable Double value,
    @Nullable String text,
    @Nullable Double deviation,
    @Nullable Double minute,
    @Nullable Double last) {

  static Figure of(double value) {
    return new Figure(value, null, null, null, null);
  }

  static Figure of(double value, @Nullable Double deviation, @Nullable String text) {
    return new Figure(value, text, deviation, null, null);
  }

  static Figure words(String text) {
    return new Figure(null, text, null, null, null);
  }

  /**
   * What two trials must have in common to be alike here: the value, and how far out it is, since
   * each was made by a revision with a window of its own.
   */
  Object sameness() {
    return value == null ? String.valueOf(text) : List.of(exact(value), exact(out()));
  }

  private static double exact(double value) {
    return Math.rint(value * 1e9) / 1e9;
  }

  double out() {
    return deviation == null ? 0 : Math.abs(deviation);
  }
}
