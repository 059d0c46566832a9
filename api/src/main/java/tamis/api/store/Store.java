package tamis.api.store;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.kitchen.Shelf;

/**
 * Keeps documents, every revision of them. A write that has returned is kept; a revision never
 * changes; a delete keeps what was. May be used by many threads. Problems are refusals: {@code
 * exists}, {@code not-found}, {@code stale}, {@code in-use}, {@code store-unavailable}, {@code
 * store-full}.
 */
public interface Store extends AutoCloseable {
  /** The revision over all documents; it grows with every write. */
  long revision();

  /** The newest revision of a document, or null if there is none or it was deleted. */
  @Nullable Stored read(Kind kind, String id);

  /** One revision of a document by its own number, also of one that was deleted; or null. */
  @Nullable Stored read(Kind kind, String id, int number);

  /** All revisions of a document, oldest first; empty if there never was one. */
  List<Stored> revisions(Kind kind, String id);

  /**
   * Documents that have every word, by id.
   *
   * @param words beginnings of words, in any case; empty for all
   * @param after the last id of the page before, or null
   */
  Listed list(Kind kind, String words, int limit, @Nullable String after);

  /** Keeps a new document. */
  Stored create(Document document, String author);

  /** Keeps a new revision in place of revision {@code expected} of the document. */
  Stored replace(Document document, int expected, String author);

  /** Takes revision {@code expected} of a document away; what was is kept. */
  void delete(Kind kind, String id, int expected, String author);

  /** The shelf as it stands now; what is written later does not change it. */
  Shelf shelf();

  @Override
  void close();
}
