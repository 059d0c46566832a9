package tamis.api.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/** Trials whole: what was written, and the observations that came to it. */
public final class Trials {
  private static final int MOST_OBSERVATIONS = 10_000;

  private Trials() {}

  /**
   * A trial as it is now.
   *
   * @param number of its own revision
   * @param added observations that came since that revision was written
   */
  public record Whole(Trial trial, int number, int added) {
    /** Changes with every revision and with every observation. */
    public String version() {
      return added == 0 ? "" + number : number + "." + added;
    }
  }

  /** A trial with all its observations, or null if there is none. */
  public static @Nullable Whole read(Store store, String id) {
    @Nullable Stored stored = store.read(Kind.TRIAL, id);
    if (stored == null) {
      return null;
    }
    List<Observed> added = store.observations(id, stored.number());
    return new Whole(joined(written(stored), added), stored.number(), added.size());
  }

  /** A trial as one of its revisions left it, with what came to that; null if there is none. */
  public static @Nullable Whole read(Store store, String id, int number) {
    @Nullable Stored stored = store.read(Kind.TRIAL, id, number);
    if (stored == null || stored.isDeleted()) {
      return null;
    }
    List<Observed> added = store.observations(id, number);
    return new Whole(joined(written(stored), added), number, added.size());
  }

  static Trial asOf(Store store, Stored stored, long revision) {
    List<Observed> added =
        store.observations(stored.id(), stored.number()).stream()
            .filter(one -> one.revision() <= revision)
            .toList();
    return joined(written(stored), added);
  }

  private static Trial written(Stored stored) {
    return (Trial) Objects.requireNonNull(stored.document()).record();
  }

  private static Trial joined(Trial trial, List<Observed> added) {
    if (added.isEmpty()) {
      return trial;
    }
    List<Observation> all = new ArrayList<>(trial.observations());
    added.forEach(one -> all.add(one.observation()));
    return new Trial(
        trial.id(),
        trial.formula(),
        trial.pins(),
        trial.to(),
        trial.started(),
        trial.changes(),
        trial.actuals(),
        trial.roomTemperature(),
        trial.flourTemperature(),
        trial.result(),
        all,
        trial.notes());
  }

  /**
   * The observation that is there already, equal to this one; or null if it is new.
   *
   * @param same the one that came later than the trial under the same id, or null
   * @param count of those that came later
   * @throws Refusal if another is there under its id, or it cannot belong to the trial
   */
  static @Nullable Observed known(
      Stored stored, Observation given, @Nullable Observed same, int count) {
    Trial trial = written(stored);
    Observed known = same;
    for (Observation one : trial.observations()) {
      if (one.id().equals(given.id())) {
        known = new Observed(one, stored.revision(), stored.written(), stored.author(), false);
      }
    }
    if (known != null) {
      if (!known.observation().equals(given)) {
        throw refused(
            FaultCode.EXISTS, "/id", given.id(), "is there already, and says something else");
      }
      return known;
    }
    if (given.at().isBefore(trial.started())) {
      throw refused(
          FaultCode.INCONSISTENT,
          "/at",
          given.at().toString(),
          "cannot lie before its trial's start, " + trial.started());
    }
    if (trial.observations().size() + count >= MOST_OBSERVATIONS) {
      throw refused(
          FaultCode.TOO_MANY, "", given.id(), "is one too many: a trial has " + MOST_OBSERVATIONS);
    }
    return null;
  }

  private static Refusal refused(FaultCode code, String pointer, String given, String why) {
    return new Refusal(new Fault(code, pointer, given, null, "observation `" + given + "` " + why));
  }
}
