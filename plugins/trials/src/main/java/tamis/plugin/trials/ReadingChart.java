package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Draws the readings of trials by minutes since their start, one panel a stage and measure, each
 * with its window. Trials are told apart by the shape of their marks, by dashes and by their names
 * at the end of the line, so that colour is not needed.
 */
final class ReadingChart {
  private static final double WIDE = 900;
  private static final double PANEL = 190;
  private static final double LEGEND_ROW = 22;
  private static final int LEGEND_COLUMNS = 4;

  private final TrialComparison.Result result;
  private final Map<String, TrialMark> marks = new LinkedHashMap<>();
  private final Drawing drawing = new Drawing();

  ReadingChart(TrialComparison.Result result) {
    this.result = result;
    result.trials().forEach(one -> marks.put(one.trial(), new TrialMark(marks.size())));
  }

  String svg() {
    Map<String, List<SeriesPoint>> panels = new LinkedHashMap<>();
    for (SeriesPoint point : result.readings()) {
      String title = point.measure().replace('-', ' ');
      String key = point.stage() == null ? title : point.stage() + ": " + title;
      panels
          .computeIfAbsent(
              key + (point.unit().isEmpty() ? "" : ", " + point.unit()), k -> new ArrayList<>())
          .add(point);
    }
    int legendRows = (marks.size() + LEGEND_COLUMNS - 1) / LEGEND_COLUMNS;
    double top = 54 + legendRows * LEGEND_ROW + 12;
    double high = top + Math.max(1, panels.size()) * PANEL + 30;
    String title = "Readings of " + Words.many(marks.size(), "trial") + " of " + result.formula();
    drawing.open(WIDE, high, title, result.conclusion());
    drawing.text(24, 32, 18, "start", title);
    legend();
    double last = result.readings().stream().mapToDouble(SeriesPoint::minute).max().orElse(1);
    double at = top;
    for (Map.Entry<String, List<SeriesPoint>> panel : panels.entrySet()) {
      new ReadingPanel(drawing, marks, panel.getKey(), panel.getValue(), at, last).draw();
      at += PANEL;
    }
    if (panels.isEmpty()) {
      drawing.text(24, at + 20, 14, "start", "No readings with a number were noted.");
    } else {
      drawing.text(WIDE / 2, at + 12, 13, "middle", "minutes since the trial was started");
    }
    return drawing.close();
  }

  private void legend() {
    int i = 0;
    for (TriedTrial trial : result.trials()) {
      double x = 24 + (i % LEGEND_COLUMNS) * 215;
      int row = i / LEGEND_COLUMNS;
      double y = 58 + row * LEGEND_ROW;
      TrialMark mark = marks.getOrDefault(trial.trial(), new TrialMark(0));
      drawing.polyline(List.of(new double[] {x, y}, new double[] {x + 34, y}), mark);
      drawing.mark(x + 17, y, mark);
      String came =
          trial.result() == null
              ? "no result"
              : trial.result().name().toLowerCase(java.util.Locale.ROOT);
      drawing.text(x + 42, y + 4, 13, "start", Drawing.shortened(trial.trial(), 14) + ", " + came);
      i++;
    }
  }
}
