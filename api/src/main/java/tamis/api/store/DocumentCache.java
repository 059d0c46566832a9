package tamis.api.store;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import org.jspecify.annotations.Nullable;

/** Documents that were read, so that none is read twice; a revision never changes. */
final class DocumentCache {
  private static final long MOST_BYTES = 48L << 20;

  /** A record takes about three times its text. */
  private static final int BYTES_A_LETTER = 4;

  private static final int OVERHEAD = 300;

  private record Place(Kind kind, String id, int number) {}

  private final Cache<Place, Document> cache =
      Caffeine.newBuilder()
          .executor(Runnable::run) // to wake another thread takes longer than the work
          .maximumWeight(MOST_BYTES)
          .weigher((Place place, Document document) -> weight(document))
          .build();

  private static int weight(Document document) {
    return OVERHEAD + BYTES_A_LETTER * document.json().length();
  }

  Document kept(Kind kind, String id, int number, String json) {
    return cache.get(new Place(kind, id, number), place -> Document.kept(kind, id, json));
  }

  /** A document if it is kept here. */
  @Nullable Document known(Kind kind, String id, int number) {
    return cache.getIfPresent(new Place(kind, id, number));
  }

  void put(int number, Document document) {
    cache.put(new Place(document.kind(), document.id(), number), document);
  }

  void clear() {
    cache.invalidateAll();
  }
}
