package tamis.api.store;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One revision of a document; it never changes.
 *
 * @param id of the document
 * @param number of the document's own revisions, from 1; it goes on after a delete
 * @param revision of the whole store at which it was written
 * @param written when
 * @param author by whom
 * @param document what was written, or null if it was deleted
 */
public record Stored(
    String id,
    int number,
    long revision,
    Instant written,
    String author,
    @Nullable Document document) {

  public boolean isDeleted() {
    return document == null;
  }
}
