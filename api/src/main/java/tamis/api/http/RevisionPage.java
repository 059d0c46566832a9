package tamis.api.http;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A page of the revisions of a document. */
public record RevisionPage(
    @Described("Revisions, oldest first") List<RevisionItem> items,
    @Described("Where the next page begins, if there is one") @Nullable String next) {

  /** One revision of a document. */
  public record RevisionItem(
      @Described(value = "Its number", example = "3") int revision,
      @Described(value = "When it was written", example = "2026-05-01T09:00:00Z") String at,
      @Described(value = "Who wrote it", example = "local") String author,
      @Described("Whether the document was deleted by it") boolean deleted) {}
}
