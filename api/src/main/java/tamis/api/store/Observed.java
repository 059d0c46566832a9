package tamis.api.store;

import java.time.Instant;
import tamis.engine.trial.Observation;

/**
 * An observation that came to a trial after it was written.
 *
 * @param revision over all trials, at which it came
 * @param isNew whether it came with this call, not with one before
 */
public record Observed(
    Observation observation, long revision, Instant written, String author, boolean isNew) {}
