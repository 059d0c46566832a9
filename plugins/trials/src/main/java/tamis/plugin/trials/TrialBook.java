package tamis.plugin.trials;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Stage;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Trial;

/** The trials that are compared, with the formulas they were made by. */
final class TrialBook {
  private final List<Trial> trials;
  private final Map<String, Formula> formulas;
  private final Map<String, Outcome> outcomes = new LinkedHashMap<>();
  private final Formula newest;

  private TrialBook(
      List<Trial> trials, Map<String, Formula> formulas, TrialComparison.Recovered recovered) {
    this.trials = trials;
    this.formulas = formulas;
    trials.forEach(trial -> outcomes.put(trial.id(), Outcome.of(trial, recovered)));
    Trial last = trials.stream().max(Comparator.comparing(TrialBook::revision)).orElseThrow();
    this.newest = Objects.requireNonNull(formulas.get(last.id()));
  }

  /**
   * @throws Refusal if a trial or the formula of one is not there, or two are of two formulas
   */
  static TrialBook of(TrialComparison.Input input, Kitchen kitchen, Notes notes) {
    Faults faults = new Faults();
    List<Trial> trials = trials(input, kitchen, faults);
    Map<String, Formula> formulas = new LinkedHashMap<>();
    for (int i = 0; i < trials.size(); i++) {
      Trial trial = trials.get(i);
      String at = input.trials().isEmpty() ? "/formula" : "/trials/" + i;
      @Nullable Formula formula = faults.gather(at, () -> kitchen.formula(trial.formula()));
      if (formula != null) {
        formulas.put(trial.id(), formula);
      }
      if (trial.formula().revision() == null) {
        notes.remark(
            "revision-not-pinned",
            at,
            "trial `" + trial.id() + "` does not say which revision was made; the newest is taken");
      }
    }
    faults.refuseIfAny();
    return new TrialBook(trials, formulas, input.recoveredOrWrong());
  }

  private static List<Trial> trials(TrialComparison.Input input, Kitchen kitchen, Faults faults) {
    FormulaRef formula = input.formula();
    if (formula != null) {
      List<Trial> all = kitchen.trialsOf(String.valueOf(formula.id()));
      if (all.size() < 2 || all.size() > TrialComparison.MOST_TRIALS) {
        faults.add(
            all.size() < 2 ? FaultCode.MISSING : FaultCode.TOO_MANY,
            "/formula",
            "formula `"
                + formula.id()
                + "` has "
                + Words.many(all.size(), "trial")
                + "; 2 to "
                + TrialComparison.MOST_TRIALS
                + " are compared");
      }
      faults.refuseIfAny();
      return all;
    }
    List<Trial> trials = new ArrayList<>();
    for (int i = 0; i < input.trials().size(); i++) {
      String id = input.trials().get(i);
      @Nullable Trial trial = faults.gather("/trials/" + i, () -> kitchen.trial(id));
      if (trial != null) {
        ofOneFormula(trials, trial, "/trials/" + i, faults);
        trials.add(trial);
      }
    }
    faults.refuseIfAny();
    return trials;
  }

  private static void ofOneFormula(List<Trial> earlier, Trial trial, String at, Faults faults) {
    if (earlier.isEmpty()) {
      return;
    }
    Trial first = earlier.get(0);
    if (!Objects.equals(first.formula().id(), trial.formula().id())) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              at,
              trial.formula().toString(),
              first.formula().id(),
              "trial `"
                  + trial.id()
                  + "` is of "
                  + trial.formula()
                  + ", trial `"
                  + first.id()
                  + "` of "
                  + first.formula()
                  + "; only trials of one formula are compared"));
    }
  }

  private static int revision(Trial trial) {
    Integer revision = trial.formula().revision();
    return revision == null ? Integer.MAX_VALUE : revision;
  }

  List<Trial> trials() {
    return trials;
  }

  Formula formula(Trial trial) {
    return Objects.requireNonNull(formulas.get(trial.id()));
  }

  /** Of the highest revision among the trials. */
  Formula newest() {
    return newest;
  }

  Outcome outcome(String trial) {
    return Objects.requireNonNull(outcomes.get(trial));
  }

  int count(Outcome outcome) {
    return (int) outcomes.values().stream().filter(outcome::equals).count();
  }

  static double minute(Trial trial, LocalDateTime at) {
    return Duration.between(trial.started(), at).toSeconds() / 60.0;
  }

  @Nullable Stage stage(String id) {
    return stage(newest, id);
  }

  static @Nullable Stage stage(Formula formula, String id) {
    return formula.stages().stream()
        .filter(stage -> stage.id().equals(id))
        .findFirst()
        .orElse(null);
  }

  /** The place of a stage in the order of work; what belongs to none comes first. */
  int order(String stage) {
    for (int i = 0; i < newest.stages().size(); i++) {
      if (newest.stages().get(i).id().equals(stage)) {
        return i;
      }
    }
    return stage.isEmpty() ? -1 : newest.stages().size();
  }

  /** The stages that are finished before this one. */
  Set<String> before(String stage) {
    Set<String> before = new HashSet<>();
    Deque<String> open = new ArrayDeque<>(List.of(stage));
    while (!open.isEmpty()) {
      @Nullable Stage one = stage(open.pop());
      for (String earlier : one == null ? List.<String>of() : one.after()) {
        if (before.add(earlier)) {
          open.push(earlier);
        }
      }
    }
    return before;
  }
}
