package tamis.api.store;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What became of a {@link Write}.
 *
 * @param number of the document's newest revision; of later observations if those are why
 * @param revision of the store that the write got, if it was kept
 * @param written when
 * @param about the formula that is gone, if that is why
 */
record Outcome(Why why, int number, long revision, Instant written, @Nullable String about) {
  /** How it ended. */
  enum Why {
    KEPT,
    /** It was to be new, and is there. */
    EXISTS,
    /** It was to be replaced, and is not there. */
    ABSENT,
    /** Another revision is the newest. */
    STALE,
    /** Observations came that the writer had not seen. */
    OBSERVED,
    /** A formula that it names is not there. */
    GONE
  }
}
