package tamis.plugin.trials;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;
import tamis.engine.trial.Trial;

/** One trial that was compared. */
public record TriedTrial(
    @Described(value = "Id of the trial", example = "t1") String trial,
    @Described(value = "Formula and revision that was made", example = "coffee-meringue-cream@1")
        String formula,
    @Described("When it was started, local time") LocalDateTime started,
    @Described("What came of it; left out if that was not noted") Trial.@Nullable Result result,
    @Described("What it counts as here") Outcome outcome,
    @Described("What was tried") List<String> changes,
    @Described("How many observations it has") int observations) {
  public TriedTrial {
    changes = List.copyOf(changes);
  }

  static TriedTrial of(Trial trial, Outcome outcome) {
    return new TriedTrial(
        trial.id(),
        trial.formula().toString(),
        trial.started(),
        trial.result(),
        outcome,
        trial.changes(),
        trial.observations().size());
  }
}
