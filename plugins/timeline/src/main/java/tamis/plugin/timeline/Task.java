package tamis.plugin.timeline;

import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;

/**
 * One load of a stage, or one activity, that is to be given a time.
 *
 * @param id unique in the plan
 * @param formula id of its formula
 * @param stage the stage it stands for, or null for an activity
 * @param micros how long it takes, in microseconds
 * @param pointer where the input speaks of it
 */
record Task(
    String id,
    @Nullable String formula,
    @Nullable Stage stage,
    String title,
    @Nullable String station,
    boolean hands,
    long micros,
    String pointer) {
  static final double MICROS_PER_MINUTE = 60e6;

  static long micros(double minutes) {
    return Math.round(minutes * MICROS_PER_MINUTE);
  }

  static double minutes(long micros) {
    return micros / MICROS_PER_MINUTE;
  }

  Task longer(long more) {
    return new Task(id, formula, stage, title, station, hands, micros + more, pointer);
  }

  /** Whether a delay that names a stage means this. */
  boolean isNamed(String name, @Nullable String ofFormula) {
    boolean named = id.equals(name) || (stage != null && stage.id().equals(name));
    return named && (ofFormula == null || ofFormula.equals(formula));
  }

  @Nullable StageTarget target() {
    return stage == null ? null : stage.target();
  }
}
