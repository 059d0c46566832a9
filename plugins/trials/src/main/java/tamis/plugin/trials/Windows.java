package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Trial;

/** Windows of stages as `stage-check` corrects them for here. */
final class Windows {
  private static final String CHECK = "stage-check";
  private static final List<String> PLACE = List.of("/altitude", "/pressure", "/boilingWater");

  private final Kitchen kitchen;
  private final TrialComparison.Input input;
  private final Notes notes;
  private final Map<String, Optional<MeasureWindow>> known = new HashMap<>();
  private final Map<Place, List<Cited>> sources = new HashMap<>();

  private record Place(String stage, String measure) {}

  Windows(Kitchen kitchen, TrialComparison.Input input, Notes notes) {
    this.kitchen = kitchen;
    this.input = input;
    this.notes = notes;
  }

  /** The window that this reading falls under, or null if the stage has none for the measure. */
  @Nullable MeasureWindow of(Trial trial, Formula formula, String stageId, Reading reading) {
    @Nullable Stage stage = TrialBook.stage(formula, stageId);
    StageTarget target = stage == null ? null : stage.target();
    if (target == null || !measures(target, reading)) {
      return null;
    }
    String key = trial.formula() + " " + stageId + " " + reading.measure();
    Optional<MeasureWindow> window = known.get(key);
    if (window == null) {
      window = Optional.ofNullable(here(trial, stageId, target, reading));
      known.put(key, window);
    }
    return window.orElse(null);
  }

  /** The rows that a window rests on. */
  List<Cited> sources(String stage, String measure) {
    return sources.getOrDefault(new Place(stage, measure), List.of());
  }

  private static boolean measures(StageTarget target, Reading reading) {
    if (target.measure() == null) {
      boolean fromTable = target.low() == null && target.high() == null;
      return fromTable || reading.measure().equals(Reading.TEMPERATURE);
    }
    String named = target.measure().name().toLowerCase(Locale.ROOT).replace('_', '-');
    return reading.measure().equals(named);
  }

  private @Nullable MeasureWindow here(
      Trial trial, String stage, StageTarget target, Reading reading) {
    @Nullable Answer<?> answer;
    try {
      answer = Asked.of(kitchen, CHECK, question(trial, stage, reading));
    } catch (Refusal refusal) {
      return unknown(stage, refusal);
    }
    if (answer == null) {
      notes.remark(
          "window-as-written",
          "/trials",
          "no calculation `stage-check` is loaded: windows are as written, not corrected for here");
      return written(target, reading.measure());
    }
    answer.remarks().forEach(this::pass);
    Record result = answer.result();
    if (!Asked.text(result, "unit").equals(reading.unit())) {
      return null;
    }
    MeasureWindow window =
        new MeasureWindow(
            Asked.number(result, "window", "low"),
            Asked.number(result, "window", "high"),
            Asked.number(result, "window", "writtenLow"),
            Asked.number(result, "window", "writtenHigh"),
            Boolean.TRUE.equals(Asked.value(result, "window", "corrected")));
    sources.put(new Place(stage, reading.measure()), aboutTheWindow(answer.sources()));
    return window;
  }

  /** What is told of one reading is no matter here; what is told of the place or can hurt is. */
  private void pass(Remark remark) {
    boolean ofThePlace = PLACE.contains(remark.pointer());
    if (ofThePlace || remark.kind() != Remark.Kind.REMARK) {
      String at = ofThePlace ? remark.pointer() : "/trials";
      notes.add(new Remark(remark.kind(), remark.code(), remark.message(), at));
    }
  }

  private Map<String, Object> question(Trial trial, String stage, Reading reading) {
    Map<String, Object> question = new LinkedHashMap<>();
    question.put("formula", trial.formula().toString());
    question.put("stage", stage);
    String value = (Bounds.plain(reading.value()) + " " + reading.unit()).strip();
    question.put("readings", List.of(Map.of("value", value)));
    if (input.altitude() != null) {
      question.put("altitude", input.altitude().toString());
    }
    if (input.pressure() != null) {
      question.put("pressure", input.pressure().toString());
    }
    if (input.boilingWater() != null) {
      question.put("boilingWater", input.boilingWater().toString());
    }
    return question;
  }

  /** A fault of the place is the caller's; any other means that this stage has no window. */
  private @Nullable MeasureWindow unknown(String stage, Refusal refusal) {
    List<Fault> ofThePlace = new ArrayList<>(refusal.faults());
    ofThePlace.removeIf(fault -> !PLACE.contains(fault.pointer()));
    if (!ofThePlace.isEmpty()) {
      throw new Refusal(ofThePlace);
    }
    notes.remark(
        "no-window",
        "/trials",
        "`" + stage + "` has no window to hold against: " + refusal.getMessage());
    return null;
  }

  private static List<Cited> aboutTheWindow(List<Cited> all) {
    return all.stream()
        .filter(one -> one.pointers().stream().anyMatch(at -> at.startsWith("/window")))
        .toList();
  }

  private static @Nullable MeasureWindow written(StageTarget target, String measure) {
    @Nullable Double low = end(target.low(), measure);
    @Nullable Double high = end(target.high(), measure);
    return low == null && high == null ? null : new MeasureWindow(low, high, low, high, false);
  }

  private static @Nullable Double end(@Nullable String text, String measure) {
    @Nullable Reading end = text == null ? null : Reading.of(measure, text);
    return end == null ? null : end.value();
  }
}
