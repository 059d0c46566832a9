package tamis.api.http;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.api.store.Stored;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Stage;
import tamis.engine.record.Nearest;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/**
 * Looks at observations before they are kept, since what is observed is never changed: a reading is
 * one of what it says was measured, and its stage is one of what was made or of its parts. A
 * formula that names no stages may be observed at any.
 */
final class NewObservations {
  private final Trial trial;
  private final Store store;
  private final Set<String> stages = new TreeSet<>();
  private final Set<String> seen = new HashSet<>();

  NewObservations(Trial trial, Store store) {
    this.trial = trial;
    this.store = store;
    gather(trial.formula());
  }

  /**
   * Gathers what cannot be meant.
   *
   * @param pointer to the observation
   */
  void check(Observation one, String pointer, Faults faults) {
    try {
      one.checkReading();
    } catch (Refusal unreadable) {
      faults.addAll(unreadable, pointer);
    }
    @Nullable String stage = one.stage();
    if (stage != null && !stages.isEmpty() && !stages.contains(stage)) {
      faults.add(
          new Fault(
              FaultCode.UNKNOWN_STAGE,
              pointer + "/stage",
              stage,
              String.join(", ", stages),
              "no stage `"
                  + stage
                  + "` in `"
                  + trial.formula()
                  + "` or its parts"
                  + Nearest.suggestion(stage, List.copyOf(stages))));
    }
  }

  private void gather(FormulaRef reference) {
    @Nullable Formula formula = reference.object() == null ? stored(reference) : reference.object();
    if (formula == null) {
      return;
    }
    for (Stage stage : formula.stages()) {
      stages.add(stage.id());
    }
    for (Line line : formula.lines()) {
      if (line.formula() != null) {
        gather(line.formula());
      }
    }
  }

  /** The formula as it was made; null if it was looked at already or is not there any more. */
  private @Nullable Formula stored(FormulaRef reference) {
    String id = String.valueOf(reference.id());
    if (!seen.add(id)) {
      return null;
    }
    @Nullable Integer number = trial.pins().getOrDefault(id, reference.revision());
    @Nullable Stored stored =
        number == null ? store.read(Kind.FORMULA, id) : store.read(Kind.FORMULA, id, number);
    var document = stored == null ? null : stored.document();
    return document != null && document.record() instanceof Formula formula ? formula : null;
  }
}
