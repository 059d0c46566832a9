package tamis.plugin.trials;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** What one trial says of a measure. */
public record TrialValue(
    @Described(value = "Id of the trial", example = "t1") String trial,
    @Described("The reading that counts, in the measure's unit; left out if it is not known")
        @Nullable Double value,
    @Described(value = "In words, where a number does not say it", example = "not read")
        @Nullable String text,
    @Described("How far outside the window or off what is written; negative below, 0 inside")
        @Nullable Double deviation,
    @Described(value = "When, since the trial's start", unit = "min") @Nullable Double minute,
    @Described("How the stage ended, if that is not the reading that counts")
        @Nullable Double last) {

  static TrialValue of(String trial, @Nullable Figure figure) {
    return figure == null
        ? new TrialValue(trial, null, "not read", null, null, null)
        : new TrialValue(
            trial,
            figure.value(),
            figure.text(),
            figure.deviation(),
            figure.minute(),
            figure.last());
  }
}
