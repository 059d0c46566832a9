package tamis.plugin.timeline;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A plan as a chart: stations below one another, their steps as bars over time, each with its hours
 * and name above it. Narrow enough for a phone; hands-on work is dark, so that it can be told apart
 * in black and white.
 */
final class StationChart {
  private static final double WIDE = 560;
  private static final double LEFT = 16;
  private static final double RIGHT = WIDE - 16;
  private static final double ROW = 33;
  private static final double GRID = 76;
  private static final int MOST_ROWS = 500;
  private static final int LONGEST_LABEL = 62;
  private static final double TICK_ROOM = 46;

  private static final String INK = "#3a2a1c";
  private static final String HANDS = "#6b4423";
  private static final String ALONE = "#d9a566";
  private static final String REST = "#f1e3c6";
  private static final String CRITICAL = "#a3262a";
  private static final Set<String> MACHINES = Set.of("mixer", "oven", "stove");

  private final Timeline.Result result;
  private final TimeAxis axis;
  private final @Nullable LocalDateTime start;
  private final Drawing drawing = new Drawing();

  StationChart(Timeline.Result result) {
    this.result = result;
    this.start = result.start() == null ? null : LocalDateTime.parse(result.start());
    List<Double> moments = new ArrayList<>();
    for (Step step : result.steps()) {
      moments.add(from(step));
      moments.add(from(step) + step.minutes());
    }
    this.axis = new TimeAxis(moments, LEFT, RIGHT - LEFT);
  }

  /** Minutes from the start of the whole; without a clock, the earliest. */
  private double from(Step step) {
    if (start == null || step.start() == null) {
      return step.earliestStart();
    }
    return Duration.between(start, LocalDateTime.parse(step.start())).toSeconds() / 60.0;
  }

  String svg() {
    Map<String, List<Step>> rows = rows();
    double steps = rows.values().stream().mapToInt(List::size).sum();
    double high = GRID + 44 + steps * ROW + rows.size() * 32 + 64;
    drawing.open(WIDE, high, INK, heading(), words());
    drawing.area(0, 0, WIDE, high, "#ffffff", 1);
    drawing.text(LEFT, 28, 18, "start", true, heading());
    drawing.text(LEFT, 48, 13, "start", false, summary());
    stretches(high - 62);
    ticks(high - 62);
    double y = GRID + 40;
    for (Map.Entry<String, List<Step>> row : rows.entrySet()) {
      y = station(row.getKey(), row.getValue(), y);
    }
    legend(high - 30);
    return drawing.close();
  }

  private Map<String, List<Step>> rows() {
    Map<String, List<Step>> rows = new LinkedHashMap<>();
    for (Step step : result.steps().subList(0, Math.min(MOST_ROWS, result.steps().size()))) {
      String station = step.station() == null ? "elsewhere" : step.station();
      rows.computeIfAbsent(station, name -> new ArrayList<>()).add(step);
    }
    return rows;
  }

  private String heading() {
    return start == null
        ? "Plan of " + Words.span(Task.micros(result.minutes()))
        : "Plan: "
            + clock(start)
            + " to "
            + clock(LocalDateTime.parse(String.valueOf(result.finish())));
  }

  private String summary() {
    int count = result.steps().size();
    return Words.span(Task.micros(result.minutes()))
        + ", "
        + count
        + (count == 1 ? " step" : " steps")
        + (result.boundBy().isEmpty() ? "" : ", bound by " + String.join(" and ", result.boundBy()))
        + (count > MOST_ROWS ? ", the first " + MOST_ROWS + " shown" : "");
  }

  private String words() {
    StringBuilder words = new StringBuilder(summary()).append('.');
    result.steps().stream()
        .limit(MOST_ROWS)
        .forEach(step -> words.append(' ').append(label(step)).append('.'));
    return words.toString();
  }

  private static String day(LocalDateTime time) {
    String name = time.getDayOfWeek().name();
    return String.format(
        Locale.ROOT,
        "%s %d.%d.",
        name.charAt(0) + name.substring(1, 3).toLowerCase(Locale.ROOT),
        time.getDayOfMonth(),
        time.getMonthValue());
  }

  private static String clock(LocalDateTime time) {
    return day(time) + " " + hour(time);
  }

  private static String hour(LocalDateTime time) {
    return String.format(Locale.ROOT, "%02d:%02d", time.getHour(), time.getMinute());
  }

  private String label(Step step) {
    double begin = from(step);
    return time(begin)
        + "–"
        + time(begin + step.minutes())
        + " "
        + step.title()
        + (step.formula() == null ? "" : " · " + step.formula());
  }

  private String time(double minute) {
    return start == null
        ? Words.span(Task.micros(minute))
        : hour(start.plusSeconds(Math.round(minute * 60)));
  }

  private double station(String name, List<Step> steps, double top) {
    drawing.area(0, top, WIDE, 24, "#efe9e4", 1);
    drawing.text(LEFT, top + 17, 14, "start", true, shortened(name, 60));
    double y = top + 30;
    for (Step step : steps) {
      step(step, y);
      y += ROW;
    }
    return y + 2;
  }

  private void step(Step step, double y) {
    double x = Math.min(axis.x(from(step)), RIGHT - 3);
    double width = Math.max(3, axis.x(from(step) + step.minutes()) - x);
    boolean critical = step.critical();
    drawing.group(label(step));
    String label = (critical ? "● " : "") + shortened(label(step), LONGEST_LABEL);
    drawing.text(LEFT, y + 11, 12.5, "start", critical, label);
    drawing.bar(x, y + 16, width, colour(step), critical ? CRITICAL : INK, critical ? 1.6 : 0.7);
    drawing.endGroup();
  }

  private static String colour(Step step) {
    if (step.hands()) {
      return HANDS;
    }
    boolean machine = step.station() != null && MACHINES.contains(Stations.key(step.station()));
    return machine ? ALONE : REST;
  }

  /** What is drawn short is grey and says how long it is. */
  private void stretches(double bottom) {
    for (TimeAxis.Stretch stretch : axis.stretches()) {
      if (stretch.isShort()) {
        double x = axis.x(stretch.from());
        double width = axis.x(stretch.to()) - x;
        drawing.area(x, GRID + 14, width, bottom - GRID - 14, "#f4f4f4", 1);
        if (width > 26) {
          long hours = Math.round((stretch.to() - stretch.from()) / 60);
          drawing.text(x + width / 2, GRID + 30, 10, "middle", false, hours + " h");
        }
      }
    }
  }

  /** Hours as lines, with the day where it changes. */
  private void ticks(double bottom) {
    double free = -TICK_ROOM;
    String today = "";
    for (double minute : moments()) {
      double x = axis.x(minute);
      if (x < free || axis.isHidden(minute)) {
        continue;
      }
      String anchor = x > RIGHT - 20 ? "end" : x < LEFT + 20 ? "start" : "middle";
      drawing.down(x, GRID + 14, bottom, INK);
      drawing.text(x, GRID + 8, 11, anchor, false, time(minute));
      if (start != null && !today.equals(day(start.plusSeconds(Math.round(minute * 60))))) {
        today = day(start.plusSeconds(Math.round(minute * 60)));
        drawing.text(x, GRID - 6, 11, anchor, true, today);
      }
      free = x + (anchor.equals("start") ? 1.5 : 1) * TICK_ROOM;
    }
  }

  /** The start, then full quarters of an hour. */
  private List<Double> moments() {
    List<Double> ticks = new ArrayList<>(List.of(0.0));
    double first = start == null ? 15 : 15 - start.getMinute() % 15 - start.getSecond() / 60.0;
    for (double minute = first; minute <= result.minutes() && ticks.size() < 5_000; minute += 15) {
      ticks.add(minute);
    }
    return ticks;
  }

  private void legend(double y) {
    double x = entry(LEFT, y, HANDS, "hands-on");
    x = entry(x, y, ALONE, "machine alone");
    x = entry(x, y, REST, "rests");
    drawing.text(x, y, 12, "start", true, "● no time to spare");
    if (axis.stretches().stream().anyMatch(TimeAxis.Stretch::isShort)) {
      String words = "Grey: a long stretch in which nothing starts or ends, drawn short";
      drawing.text(LEFT, y + 18, 11, "start", false, words);
    }
  }

  private double entry(double x, double y, String colour, String words) {
    drawing.bar(x, y - 10, 14, colour, INK, 0.7);
    drawing.text(x + 19, y, 12, "start", false, words);
    return x + 34 + words.length() * 6.6;
  }

  private static String shortened(String text, int most) {
    return text.codePointCount(0, text.length()) <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "…";
  }
}
