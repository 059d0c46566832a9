package tamis.plugin.trials;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One measure over the trials that it is known of.
 *
 * @param key what is measured where
 * @param against what it is held against
 * @param window of the newest revision, or null
 * @param width how much counts as one width, in the unit
 * @param scale the row that the width is from, or null if it is the window's own
 * @param effect whether it tells of the outcome rather than of a cause
 * @param figures by trial, in the order of their ids; a trial of which nothing is known is not
 *     there
 */
record Measured(
    Key key,
    Against against,
    @Nullable MeasureWindow window,
    double width,
    @Nullable Scale scale,
    boolean effect,
    Map<String, Figure> figures) {

  /**
   * What is measured where.
   *
   * @param stage empty if it belongs to none
   * @param of the ingredient, the change or the part that is meant, or empty
   */
  record Key(String stage, String measure, String of, String unit) {
    /** {@code temperature at `syrup`}, {@code weighed butter-unsalted}. */
    String words() {
      String what = measure.replace('-', ' ') + (of.isEmpty() ? "" : " " + of);
      return stage.isEmpty() ? what : what + " at `" + stage + "`";
    }
  }

  Measured {
    figures = new TreeMap<>(figures);
  }

  static Measured loose(Key key, Map<String, Figure> figures) {
    return loose(key, false, figures);
  }

  /** One that nothing says what it should be. */
  static Measured loose(Key key, boolean effect, Map<String, Figure> figures) {
    Scale scale = Scale.of(key.measure());
    return new Measured(
        key, Against.EACH_OTHER, null, scale.width(mean(figures)), scale, effect, figures);
  }

  private static double mean(Map<String, Figure> figures) {
    return figures.values().stream()
        .map(Figure::value)
        .mapToDouble(value -> value == null ? 0 : value)
        .average()
        .orElse(0);
  }

  /** Whether two trials differ in it, or one is out of its window and another was not read. */
  boolean isDifference(int trials) {
    return !isAlike() || (figures.size() < trials && furthest() > 0);
  }

  boolean isAlike() {
    return figures.values().stream().map(Figure::sameness).distinct().count() <= 1;
  }

  /** The largest deviation of any trial, in widths; without one, how far apart the trials are. */
  double distance() {
    if (against != Against.EACH_OTHER) {
      return furthest() / width;
    }
    Collection<Figure> all = figures.values();
    if (all.stream().anyMatch(figure -> figure.value() == null)) {
      return isAlike() ? 0 : 1 / width;
    }
    double low = all.stream().mapToDouble(Measured::plain).min().orElse(0);
    double high = all.stream().mapToDouble(Measured::plain).max().orElse(0);
    return (high - low) / width;
  }

  double furthest() {
    return figures.values().stream().mapToDouble(Figure::out).max().orElse(0);
  }

  /** What is compared between outcomes: how far out, or the value itself. */
  double compared(Figure figure) {
    return against == Against.EACH_OTHER ? plain(figure) : figure.out();
  }

  private static double plain(Figure figure) {
    return figure.value() == null ? 0 : figure.value();
  }

  boolean isNumeric() {
    return figures.values().stream().allMatch(figure -> figure.value() != null);
  }
}
