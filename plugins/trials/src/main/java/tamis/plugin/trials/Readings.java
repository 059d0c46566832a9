package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Notes;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/**
 * What the observations of trials say, aligned by stage and measure. Of several readings in one
 * trial the last counts; at butter, creams and doughs, which are not on their way to anything, the
 * one furthest outside of the window does, since a batch that was brought back was out before.
 */
final class Readings {
  static final String DURATION = "duration";
  private static final String SYMPTOM = "symptom";
  private static final String SCORE = "score";
  private static final Set<StageTarget.Kind> STEADY =
      Set.of(StageTarget.Kind.BUTTER, StageTarget.Kind.CREAM, StageTarget.Kind.DOUGH);

  private final TrialBook book;
  private final Windows windows;
  private final Notes notes;
  private final Map<Measured.Key, Map<String, List<Timed>>> read = new LinkedHashMap<>();
  private final Map<String, Map<String, Figure>> durations = new TreeMap<>();
  private final Map<String, Map<String, Figure>> symptoms = new TreeMap<>();
  private final Map<String, Map<String, Figure>> scores = new TreeMap<>();
  private final Map<Measured.Key, MeasureWindow> shown = new HashMap<>();

  /** A reading with its time and how far outside its own window it is. */
  record Timed(double minute, double value, @Nullable Double deviation) {}

  Readings(TrialBook book, Windows windows, Notes notes) {
    this.book = book;
    this.windows = windows;
    this.notes = notes;
    book.trials().forEach(this::gather);
  }

  private void gather(Trial trial) {
    List<Observation> inOrder = new ArrayList<>(trial.observations());
    inOrder.sort(Comparator.comparing(Observation::at));
    Set<String> strange = new TreeSet<>();
    for (Observation one : inOrder) {
      String stage = one.stage() == null ? "" : one.stage();
      if (!stage.isEmpty() && TrialBook.stage(book.formula(trial), stage) == null) {
        strange.add(stage);
      }
      if (one.value() != null) {
        reading(trial, stage, one);
      }
      TimeSpan duration = one.duration();
      if (duration != null) {
        durations
            .computeIfAbsent(stage, s -> new TreeMap<>())
            .put(trial.id(), lasted(trial, stage, duration));
      }
      if (one.score() != null) {
        scores.computeIfAbsent(stage, s -> new TreeMap<>()).put(trial.id(), Figure.of(one.score()));
      }
      if (one.symptom() != null) {
        symptoms
            .computeIfAbsent(stage, s -> new TreeMap<>())
            .merge(trial.id(), Figure.words(one.symptom()), Readings::both);
      }
    }
    for (String stage : strange) {
      notes.remark(
          "unknown-stage",
          "/trials",
          "trial `"
              + trial.id()
              + "` was read at `"
              + stage
              + "`, which its formula does not have");
    }
  }

  private static Figure both(Figure first, Figure second) {
    Set<String> all = new TreeSet<>(List.of(String.valueOf(first.text()).split(", ", -1)));
    all.add(String.valueOf(second.text()));
    return Figure.words(String.join(", ", all));
  }

  private void reading(Trial trial, String stage, Observation one) {
    @Nullable Reading reading = Reading.of(one);
    if (reading == null) {
      notes.remark(
          "reading-not-readable",
          "/trials",
          "`"
              + one.value()
              + "` of observation `"
              + one.id()
              + "` of trial `"
              + trial.id()
              + "` is no reading of "
              + (one.measure() == null ? "anything" : one.measure())
              + "; it counts as not read");
      return;
    }
    Measured.Key key = new Measured.Key(stage, reading.measure(), "", reading.unit());
    @Nullable MeasureWindow window = windows.of(trial, book.formula(trial), stage, reading);
    if (window != null && (!shown.containsKey(key) || book.formula(trial).equals(book.newest()))) {
      shown.put(key, window);
    }
    @Nullable Double deviation = window == null ? null : window.deviation(reading.value());
    read.computeIfAbsent(key, k -> new TreeMap<>())
        .computeIfAbsent(trial.id(), t -> new ArrayList<>())
        .add(new Timed(TrialBook.minute(trial, one.at()), reading.value(), deviation));
  }

  private Figure lasted(Trial trial, String stageId, TimeSpan duration) {
    @Nullable Stage stage = TrialBook.stage(book.formula(trial), stageId);
    TimeSpan written = stage == null ? null : stage.duration();
    double minutes = duration.minutes();
    return Figure.of(minutes, written == null ? null : minutes - written.minutes(), null);
  }

  /** All readings by key and trial, each in the order of time. */
  Map<Measured.Key, Map<String, List<Timed>>> all() {
    return read;
  }

  @Nullable MeasureWindow window(Measured.Key key) {
    return shown.get(key);
  }

  List<Measured> measures() {
    List<Measured> measures = new ArrayList<>();
    read.forEach((key, byTrial) -> measures.add(measured(key, byTrial)));
    durations.forEach((stage, figures) -> measures.add(duration(stage, figures)));
    scores.forEach(
        (stage, figures) ->
            measures.add(Measured.loose(new Measured.Key(stage, SCORE, "", ""), true, figures)));
    symptoms.forEach(
        (stage, figures) ->
            measures.add(
                Measured.loose(new Measured.Key(stage, SYMPTOM, "", ""), true, noted(figures))));
    return measures;
  }

  /** A trial of which no symptom was noted at a stage is not known to have had none. */
  private Map<String, Figure> noted(Map<String, Figure> figures) {
    Map<String, Figure> noted = new TreeMap<>(figures);
    book.trials().forEach(trial -> noted.putIfAbsent(trial.id(), Figure.words("none noted")));
    return noted;
  }

  private Measured measured(Measured.Key key, Map<String, List<Timed>> byTrial) {
    @Nullable Stage stage = book.stage(key.stage());
    StageTarget target = stage == null ? null : stage.target();
    boolean steady = target != null && target.kind() != null && STEADY.contains(target.kind());
    Map<String, Figure> figures = new TreeMap<>();
    byTrial.forEach((trial, series) -> figures.put(trial, counting(series, steady)));
    @Nullable MeasureWindow window = shown.get(key);
    boolean all = figures.values().stream().allMatch(figure -> figure.deviation() != null);
    if (window == null || !all) {
      return Measured.loose(key, figures);
    }
    boolean own = window.width() > 0;
    @Nullable Scale scale = own ? null : Scale.of(key.measure());
    double width =
        scale == null ? window.width() : scale.width(figures.values().iterator().next().out());
    return new Measured(key, Against.WINDOW, window, width, scale, false, figures);
  }

  private static Figure counting(List<Timed> series, boolean steady) {
    Timed last = series.get(series.size() - 1);
    Timed counts = last;
    for (Timed one : series) {
      boolean further =
          one.deviation() != null
              && counts.deviation() != null
              && Math.abs(one.deviation()) > Math.abs(counts.deviation());
      counts = steady && further ? one : counts;
    }
    @Nullable Double ended = counts.value() == last.value() ? null : last.value();
    return new Figure(counts.value(), null, counts.deviation(), counts.minute(), ended);
  }

  private Measured duration(String stageId, Map<String, Figure> figures) {
    Measured.Key key = new Measured.Key(stageId, DURATION, "", "min");
    @Nullable Stage stage = book.stage(stageId);
    TimeSpan written = stage == null ? null : stage.duration();
    boolean all = figures.values().stream().allMatch(figure -> figure.deviation() != null);
    if (written == null || written.minutes() == 0 || !all) {
      return Measured.loose(key, figures);
    }
    Scale scale = Scale.of(DURATION);
    return new Measured(
        key, Against.AS_WRITTEN, null, scale.width(written.minutes()), scale, false, figures);
  }
}
