package tamis.engine.trial;

import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;

/** One making of a formula, with its observations. */
public record Trial(
    @Described(value = "Lower-case words with hyphens", example = "t1", most = 80) String id,
    @Described(
            value = "The formula that was made, with its revision",
            example = "coffee-meringue-cream@3")
        FormulaRef formula,
    @Described(value = "Revisions of the sub-formulas that were made", optional = true)
        Map<String, Integer> pins,
    @Described("How much was made") @Nullable To to,
    @Described(value = "Local time, ISO 8601", example = "2026-04-11T08:10") LocalDateTime started,
    @Described(value = "What was tried differently", optional = true, most = 100)
        List<String> changes,
    @Described(value = "What was really weighed, where it differs", optional = true, most = 2_000)
        List<Actual> actuals,
    @Described(value = "Temperature of the room", example = "22 °C")
        @Nullable Temperature roomTemperature,
    @Described(value = "Temperature of the flour", example = "19 °C")
        @Nullable Temperature flourTemperature,
    @Described("What came of it") @Nullable Result result,
    @Described(
            value = "Readings, symptoms and notes, in the order they came",
            optional = true,
            most = 10_000)
        List<Observation> observations,
    @Described(value = "In the baker's words", most = 20_000) @Nullable String notes) {
  /** What came of a trial. */
  public enum Result {
    KEPT,
    RECOVERED,
    DISCARDED
  }

  public Trial {
    Faults faults = new Faults();
    if (!Ingredient.isId(id)) {
      faults.add(FaultCode.NOT_ALLOWED, "/id", "an id is lower-case words with hyphens, was " + id);
    }
    if (formula.id() == null) {
      faults.add(FaultCode.INCONSISTENT, "/formula", "a trial names a stored formula, id or id@n");
    }
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < observations.size(); i++) {
      Observation observation = observations.get(i);
      if (!ids.add(observation.id())) {
        faults.add(
            FaultCode.DUPLICATE,
            "/observations/" + i + "/id",
            "observation `" + observation.id() + "` stands twice");
      }
      if (observation.at().isBefore(started)) {
        faults.add(
            FaultCode.INCONSISTENT,
            "/observations/" + i + "/at",
            "an observation cannot lie before its trial's start, " + started);
      }
    }
    faults.refuseIfAny();
  }
}
