package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Trial;

/** Works out one comparison. */
final class Comparison {
  /** Of one series, and of all of them together, so many readings are listed and drawn. */
  private static final int MOST_POINTS = 200;

  private static final int MOST_IN_ALL = 6_000;
  private static final int FEWEST_POINTS = 4;

  private final Kitchen kitchen;
  private final Notes notes = new Notes();
  private final TrialBook book;
  private final Windows windows;
  private final Readings readings;
  private final List<Weighted> ordered;

  Comparison(TrialComparison.Input input, Kitchen kitchen) {
    this.kitchen = kitchen;
    this.book = TrialBook.of(input, kitchen, notes);
    this.windows = new Windows(kitchen, input, notes);
    this.readings = new Readings(book, windows, notes);
    List<Measured> all = new ArrayList<>(readings.measures());
    all.addAll(new Weighed(book, kitchen, notes).measures());
    all.addAll(new Conditions(book, kitchen, notes).measures());
    this.ordered =
        all.stream()
            .map(measured -> Weighted.of(measured, book))
            .sorted(TrialOrder.byWeight(book))
            .toList();
  }

  Answer<TrialComparison.Result> answer() {
    List<Weighted> differing =
        ordered.stream().filter(one -> one.measured().isDifference(book.trials().size())).toList();
    Causes causes = new Causes(differing, book);
    List<Unread> unread = unread();
    List<Difference> differences = new ArrayList<>();
    for (Weighted one : differing) {
      cite(one.measured(), differences.size());
      differences.add(shown(one));
    }
    causes.remark(notes);
    TrialComparison.Result result =
        new TrialComparison.Result(
            String.valueOf(book.trials().get(0).formula().id()),
            book.trials().stream()
                .map(trial -> TriedTrial.of(trial, book.outcome(trial.id())))
                .toList(),
            differences,
            causes.candidates(),
            causes.conclusion(),
            causes.looks(),
            new NextStep(ordered, causes, unread, book).change(),
            new LostCost(book, kitchen, notes).lost(),
            unread,
            points());
    return Answer.of(result, notes);
  }

  private Difference shown(Weighted one) {
    Measured measured = one.measured();
    Measured.Key key = measured.key();
    List<TrialValue> values = new ArrayList<>();
    for (Trial trial : book.trials()) {
      values.add(TrialValue.of(trial.id(), measured.figures().get(trial.id())));
    }
    return new Difference(
        orNull(key.stage()),
        key.measure(),
        orNull(key.of()),
        key.unit(),
        values,
        measured.window(),
        measured.against(),
        one.distance(),
        measured.width(),
        one.separation(),
        one.test() == null ? null : Double.valueOf(one.test().chance()),
        measured.effect());
  }

  static @Nullable String orNull(String text) {
    return text.isEmpty() ? null : text;
  }

  private void cite(Measured measured, int index) {
    String at = "/differences/" + index;
    if (measured.scale() != null) {
      notes.cite(measured.scale().row(), at + "/width");
    }
    if (measured.window() != null) {
      for (Cited one : windows.sources(measured.key().stage(), measured.key().measure())) {
        notes.cite(
            one.table(), one.row(), one.source(), one.locator(), one.basis(), at + "/window");
      }
    }
  }

  private List<Unread> unread() {
    List<Unread> unread = new ArrayList<>();
    for (Stage stage : book.newest().stages()) {
      StageTarget target = stage.target();
      if (target == null) {
        continue;
      }
      StageTarget.Measure watched =
          target.measure() == null ? StageTarget.Measure.TEMPERATURE : target.measure();
      String measure = watched.name().toLowerCase(Locale.ROOT).replace('_', '-');
      List<String> missing =
          book.trials().stream()
              .map(Trial::id)
              .filter(id -> !isRead(id, stage.id(), measure))
              .sorted()
              .toList();
      if (!missing.isEmpty()) {
        unread.add(new Unread(stage.id(), measure, missing));
      }
    }
    return unread;
  }

  private boolean isRead(String trial, String stage, String measure) {
    return readings.all().entrySet().stream()
        .anyMatch(
            entry ->
                entry.getKey().stage().equals(stage)
                    && entry.getKey().measure().equals(measure)
                    && entry.getValue().containsKey(trial));
  }

  private List<SeriesPoint> points() {
    List<Measured.Key> keys = new ArrayList<>(readings.all().keySet());
    keys.sort(
        java.util.Comparator.comparingInt((Measured.Key key) -> book.order(key.stage()))
            .thenComparing(TrialOrder.BY_WORDS));
    List<SeriesPoint> points = new ArrayList<>();
    for (Measured.Key key : keys) {
      @Nullable MeasureWindow window = readings.window(key);
      Map<String, List<Readings.Timed>> byTrial = readings.all().getOrDefault(key, Map.of());
      for (Trial trial : book.trials()) {
        for (Readings.Timed one : thinned(byTrial.getOrDefault(trial.id(), List.of()))) {
          points.add(
              new SeriesPoint(
                  orNull(key.stage()),
                  key.measure(),
                  key.unit(),
                  trial.id(),
                  one.minute(),
                  one.value(),
                  window == null ? null : window.low(),
                  window == null ? null : window.high()));
        }
      }
    }
    return points;
  }

  /** A probe may have sent thousands; every so manieth is drawn, and the last. */
  private List<Readings.Timed> thinned(List<Readings.Timed> series) {
    int many = readings.all().values().stream().mapToInt(Map::size).sum();
    int most = Math.max(FEWEST_POINTS, Math.min(MOST_POINTS, MOST_IN_ALL / Math.max(1, many)));
    if (series.size() <= most) {
      return series;
    }
    notes.remark(
        "readings-thinned",
        "/trials",
        "of long series of readings only some are listed and drawn; all of them are compared");
    List<Readings.Timed> kept = new ArrayList<>();
    for (int i = 0; i < most; i++) {
      kept.add(series.get((int) ((long) i * (series.size() - 1) / (most - 1))));
    }
    return kept;
  }
}
