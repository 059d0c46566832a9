package tamis.api.store;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.trial.Observation;

/**
 * Keeps documents, every revision of them. A write that has returned is kept; a revision never
 * changes; a delete keeps what was. May be used by many threads. Problems are refusals: {@code
 * exists}, {@code not-found}, {@code stale}, {@code in-use}, {@code store-unavailable}, {@code
 * store-full}.
 */
public interface Store extends AutoCloseable {
  /** The revision over formulas, ingredients and prices; it grows with every write of them. */
  long revision();

  /** The revision over trials and their observations, counted apart. */
  long trials();

  /** Whether the place where documents lie answers at this moment. */
  boolean answers();

  /** The newest revision of a document, or null if there is none or it was deleted. */
  @Nullable Stored read(Kind kind, String id);

  /** One revision of a document by its own number, also of one that was deleted; or null. */
  @Nullable Stored read(Kind kind, String id, int number);

  /**
   * The document as it was when the store was at a revision, or null if there was none.
   *
   * @param revision over the documents of its kind
   */
  @Nullable Stored readAsOf(Kind kind, String id, long revision);

  /** All revisions of a document, oldest first; empty if there never was one. */
  List<Stored> revisions(Kind kind, String id);

  /**
   * Documents that have every word, by id.
   *
   * @param words beginnings of words, in any case; empty for all
   * @param after the last id of the page before, or null
   */
  Listed list(Kind kind, String words, int limit, @Nullable String after);

  /** Ids of documents that name this formula, or did in some revision. */
  Collection<String> users(Kind kind, String formula);

  /** Ids of ingredients that go by this name, in lower case, or did in some revision. */
  Collection<String> ingredientsNamed(String folded);

  /** Keeps a new document. */
  Stored create(Document document, String author);

  /** Keeps a new revision in place of revision {@code expected} of the document. */
  Stored replace(Document document, int expected, String author);

  /**
   * Keeps a new revision of a trial in place of revision {@code expected}, if no observation came
   * to it but those that the caller has seen.
   *
   * @param seen how many that were
   */
  Stored replaceTrial(Document trial, int expected, int seen, String author);

  /** Takes revision {@code expected} of a document away; what was is kept. */
  void delete(Kind kind, String id, int expected, String author);

  /** Observations that came to a revision of a trial after it was written, in their order. */
  List<Observed> observations(String trial, int number);

  /**
   * Keeps an observation of the newest revision of a trial. One that is there already, equal in all
   * parts, is answered as it was kept.
   */
  Observed observe(String trial, Observation observation, String author);

  /** The shelf as it stands now; what is written later does not change it. */
  StoreShelf shelf();

  @Override
  void close();
}
