package tamis.api.http;

import java.time.Clock;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.api.store.Document;
import tamis.api.store.Kind;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;
import tamis.api.store.Stored;

/**
 * What sets one kind of document apart from another.
 *
 * @param kind in the store
 * @param path of the list
 * @param builtIn documents that come with the engine; a shop's own stands before one of its id
 */
record DocumentKind(Kind kind, String path, Supplier<Store> builtIn) {
  private static final Store NONE = new MemoryStore(Clock.systemUTC());

  /** A kind of which nothing comes with the engine. */
  static DocumentKind ofShop(Kind kind, String path) {
    return new DocumentKind(kind, path, () -> NONE);
  }

  String pathOf(String id) {
    return path + "/" + id;
  }

  /** {@code formula `brioche`}. */
  String named(String id) {
    return kind.word() + " `" + id + "`";
  }

  /**
   * A document as it is there now.
   *
   * @param number of its revision; 0 if it is built in
   */
  record Present(int number, Document document) {}

  /** What is there now: the shop's own document, else the built-in one, else null. */
  @Nullable Present present(Store store, String id) {
    @Nullable Stored own = store.read(kind, id);
    if (own != null && own.document() != null) {
      return new Present(own.number(), own.document());
    }
    @Nullable Stored given = builtIn.get().read(kind, id);
    return given == null || given.document() == null ? null : new Present(0, given.document());
  }
}
