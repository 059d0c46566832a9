package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One panel: the readings of one measure at one stage, with the window as a band. */
final class ReadingPanel {
  private static final double LEFT = 70;
  private static final double RIGHT = 790;
  private static final double HIGH = 130;
  private static final double TITLE = 18;
  private static final double NAME_ROW = 13;

  /** Marks at the edge would stand in the title. */
  private static final double AIR = 0.06;

  private static final String BAND = "#e3efe3";
  private static final String EDGE = "#6b8f6b";
  private static final String GRID = "#e4e4e4";

  private final Drawing drawing;
  private final Map<String, TrialMark> marks;
  private final String title;
  private final List<SeriesPoint> points;
  private final double top;
  private final Ticks across;
  private final Ticks up;

  /** The name of a trial beside the end of its line. */
  private record End(String trial, double x, double y) {}

  ReadingPanel(
      Drawing drawing,
      Map<String, TrialMark> marks,
      String title,
      List<SeriesPoint> points,
      double at,
      double lastMinute) {
    this.drawing = drawing;
    this.marks = marks;
    this.title = title;
    this.points = points;
    this.top = at + TITLE;
    double low = Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    for (SeriesPoint point : points) {
      low = Math.min(low, Math.min(point.value(), or(point.low(), point.value())));
      high = Math.max(high, Math.max(point.value(), or(point.high(), point.value())));
    }
    double air = (high - low) * AIR;
    this.up = Ticks.of(low - air, high + air);
    this.across = Ticks.of(0, lastMinute);
  }

  private static double or(@Nullable Double value, double other) {
    return value == null ? other : value;
  }

  void draw() {
    drawing.text(LEFT, top - 6, 14, "start", title);
    band();
    for (double tick : up.values()) {
      drawing.line(LEFT, y(tick), RIGHT, y(tick), GRID, "");
      drawing.text(LEFT - 8, y(tick) + 4, 11, "end", Words.number(tick));
    }
    for (double tick : across.values()) {
      drawing.line(x(tick), top + HIGH, x(tick), top + HIGH + 4, Drawing.INK, "");
      drawing.text(x(tick), top + HIGH + 16, 11, "middle", Words.number(tick));
    }
    drawing.line(LEFT, top, LEFT, top + HIGH, Drawing.INK, "");
    drawing.line(LEFT, top + HIGH, RIGHT, top + HIGH, Drawing.INK, "");
    List<End> ends = series();
    names(ends);
  }

  private void band() {
    SeriesPoint one = points.get(0);
    if (one.low() == null && one.high() == null) {
      return;
    }
    double upper = one.high() == null ? top : y(one.high());
    double lower = one.low() == null ? top + HIGH : y(one.low());
    drawing.rectangle(LEFT, upper, RIGHT - LEFT, Math.max(1, lower - upper), BAND, "none");
    if (one.high() != null) {
      drawing.line(LEFT, upper, RIGHT, upper, EDGE, "5 3");
    }
    if (one.low() != null) {
      drawing.line(LEFT, lower, RIGHT, lower, EDGE, "5 3");
    }
    String window = new MeasureWindow(one.low(), one.high(), null, null, false).words(one.unit());
    drawing.text(RIGHT, top - 6, 12, "end", "window " + window);
  }

  private List<End> series() {
    Map<String, List<double[]>> lines = new LinkedHashMap<>();
    for (SeriesPoint point : points) {
      lines
          .computeIfAbsent(point.trial(), t -> new ArrayList<>())
          .add(new double[] {x(point.minute()), y(point.value())});
    }
    List<End> ends = new ArrayList<>();
    lines.forEach(
        (trial, line) -> {
          TrialMark mark = marks.getOrDefault(trial, new TrialMark(0));
          drawing.polyline(line, mark);
          line.forEach(at -> drawing.mark(at[0], at[1], mark));
          double[] last = line.get(line.size() - 1);
          ends.add(new End(trial, last[0], last[1]));
        });
    return ends;
  }

  /** Names stand below each other beside the panel, as near to their lines as they fit. */
  private void names(List<End> ends) {
    ends.sort(Comparator.comparingDouble(End::y).thenComparing(End::trial));
    double row = Math.min(NAME_ROW, (HIGH + 2 * TITLE) / Math.max(1, ends.size()));
    double free = top - 4;
    for (int i = 0; i < ends.size(); i++) {
      End end = ends.get(i);
      double room = top + HIGH + 10 - (ends.size() - 1 - i) * row;
      double at = Math.min(Math.max(end.y() + 4, free), room);
      free = at + row;
      drawing.line(end.x() + 7, end.y(), RIGHT + 8, at - 4, "#bbbbbb", "1 2");
      drawing.text(RIGHT + 12, at, row < 9 ? 7 : 11, "start", Drawing.shortened(end.trial(), 14));
    }
  }

  private double x(double minute) {
    return LEFT + across.part(minute) * (RIGHT - LEFT);
  }

  private double y(double value) {
    return top + HIGH - up.part(value) * HIGH;
  }
}
