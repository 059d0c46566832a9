package tamis.plugin.trials;

import tamis.engine.trial.Trial;

/** What a trial counts as when outcomes are told apart. */
public enum Outcome {
  KEPT,
  GONE_WRONG,
  /** Nothing is known of what came of it, or it is left out. */
  NOT_JUDGED;

  static Outcome of(Trial trial, TrialComparison.Recovered recovered) {
    Trial.Result result = trial.result();
    if (result == null) {
      return NOT_JUDGED;
    }
    return switch (result) {
      case KEPT -> KEPT;
      case DISCARDED -> GONE_WRONG;
      case RECOVERED ->
          switch (recovered) {
            case GONE_WRONG -> GONE_WRONG;
            case KEPT -> KEPT;
            case LEFT_OUT -> NOT_JUDGED;
          };
    };
  }
}
