package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Where a moment lies on paper. Long stretches in which nothing starts or ends are drawn short, so
 * that a night's rest leaves room for what needs hands.
 */
final class TimeAxis {
  private static final double LONG_MINUTES = 90;
  private static final double SHORT_MINUTES = 40;

  private final List<Stretch> stretches = new ArrayList<>();
  private final double left;
  private final double scale;

  /**
   * A stretch between two moments at which something starts or ends.
   *
   * @param at where it begins on paper, in drawn minutes
   * @param drawn how many minutes it is drawn as
   */
  record Stretch(double from, double to, double at, double drawn) {
    boolean isShort() {
      return drawn < to - from;
    }
  }

  TimeAxis(List<Double> moments, double left, double width) {
    this.left = left;
    double at = 0;
    Double before = null;
    for (double moment : new TreeSet<>(moments)) {
      if (before != null) {
        double length = moment - before;
        double drawn = length > LONG_MINUTES ? SHORT_MINUTES : length;
        stretches.add(new Stretch(before, moment, at, drawn));
        at += drawn;
      }
      before = moment;
    }
    this.scale = at == 0 ? 0 : width / at;
  }

  double x(double minute) {
    for (Stretch stretch : stretches) {
      if (minute <= stretch.to()) {
        double part = (minute - stretch.from()) / (stretch.to() - stretch.from());
        return left + (stretch.at() + Math.max(0, part) * stretch.drawn()) * scale;
      }
    }
    return stretches.isEmpty() ? left : end();
  }

  private double end() {
    Stretch last = stretches.get(stretches.size() - 1);
    return left + (last.at() + last.drawn()) * scale;
  }

  List<Stretch> stretches() {
    return stretches;
  }

  /** Whether a moment lies within a stretch that is drawn short. */
  boolean isHidden(double minute) {
    return stretches.stream().anyMatch(s -> s.isShort() && s.from() < minute && minute < s.to());
  }
}
