package tamis.api.store;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Shelf;

/** Documents in memory, gone when the program ends. Writes take turns; reads do not wait. */
public final class MemoryStore implements Store {
  private final Clock clock;
  private final Map<Kind, NavigableMap<String, List<Stored>>> documents = new EnumMap<>(Kind.class);
  private volatile long revision;
  private volatile StoreShelf shelf = new StoreShelf(this, 0);

  public MemoryStore(Clock clock) {
    this.clock = clock;
    for (Kind kind : Kind.values()) {
      documents.put(kind, new ConcurrentSkipListMap<>());
    }
  }

  @Override
  public long revision() {
    return revision;
  }

  @Override
  public @Nullable Stored read(Kind kind, String id) {
    return newest(revisions(kind, id), Long.MAX_VALUE);
  }

  @Override
  public @Nullable Stored read(Kind kind, String id, int number) {
    List<Stored> all = revisions(kind, id);
    return number >= 1 && number <= all.size() ? all.get(number - 1) : null;
  }

  @Override
  public List<Stored> revisions(Kind kind, String id) {
    return of(kind).getOrDefault(id, List.of());
  }

  @Override
  public Listed list(Kind kind, String words, int limit, @Nullable String after) {
    Set<String> wanted = Document.split(List.of(words));
    NavigableMap<String, List<Stored>> all = of(kind);
    List<Stored> rows = new ArrayList<>();
    for (List<Stored> one : (after == null ? all : all.tailMap(after, false)).values()) {
      @Nullable Stored newest = newest(one, Long.MAX_VALUE);
      if (newest != null && newest.document() != null && hasAll(newest.document(), wanted)) {
        if (rows.size() == limit) {
          return new Listed(rows, rows.get(limit - 1).id());
        }
        rows.add(newest);
      }
    }
    return new Listed(rows, null);
  }

  private static boolean hasAll(Document document, Set<String> wanted) {
    return wanted.stream()
        .allMatch(begin -> document.words().stream().anyMatch(word -> word.startsWith(begin)));
  }

  @Override
  public synchronized Stored create(Document document, String author) {
    if (read(document.kind(), document.id()) != null) {
      throw refused(FaultCode.EXISTS, document.kind(), document.id(), "exists already");
    }
    return write(document.kind(), document.id(), document, author);
  }

  @Override
  public synchronized Stored replace(Document document, int expected, String author) {
    current(document.kind(), document.id(), expected);
    return write(document.kind(), document.id(), document, author);
  }

  @Override
  public synchronized void delete(Kind kind, String id, int expected, String author) {
    current(kind, id, expected);
    if (kind == Kind.FORMULA) {
      refuseIfUsed(id);
    }
    write(kind, id, null, author);
  }

  private void current(Kind kind, String id, int expected) {
    @Nullable Stored now = read(kind, id);
    if (now == null) {
      throw refused(FaultCode.NOT_FOUND, kind, id, "is not there");
    }
    if (now.number() != expected) {
      throw refused(
          FaultCode.STALE, kind, id, "is at revision " + now.number() + " now, not " + expected);
    }
  }

  private void refuseIfUsed(String id) {
    List<String> users =
        of(Kind.FORMULA).values().stream()
            .map(all -> newest(all, Long.MAX_VALUE))
            .filter(
                stored ->
                    stored != null
                        && stored.document() != null
                        && stored.document().uses().contains(id))
            .map(stored -> stored == null ? "" : stored.id())
            .collect(Collectors.toList());
    if (!users.isEmpty()) {
      throw refused(FaultCode.IN_USE, Kind.FORMULA, id, "is used by " + String.join(", ", users));
    }
  }

  private Stored write(Kind kind, String id, @Nullable Document document, String author) {
    List<Stored> before = revisions(kind, id);
    Stored stored =
        new Stored(id, before.size() + 1, revision + 1, Instant.now(clock), author, document);
    List<Stored> after = new ArrayList<>(before);
    after.add(stored);
    of(kind).put(id, List.copyOf(after));
    revision = stored.revision();
    return stored;
  }

  /** One shelf a revision, so that what it has looked up serves the next caller, too. */
  @Override
  public Shelf shelf() {
    StoreShelf known = shelf;
    long now = revision;
    if (known.revision() != now) {
      known = new StoreShelf(this, now);
      shelf = known;
    }
    return known;
  }

  /** The newest revision that was written up to {@code revision}, or null if it was deleted. */
  static @Nullable Stored newest(List<Stored> all, long revision) {
    for (int i = all.size() - 1; i >= 0; i--) {
      if (all.get(i).revision() <= revision) {
        return all.get(i).isDeleted() ? null : all.get(i);
      }
    }
    return null;
  }

  private NavigableMap<String, List<Stored>> of(Kind kind) {
    NavigableMap<String, List<Stored>> map = documents.get(kind);
    if (map == null) {
      throw new IllegalStateException("no documents of kind " + kind);
    }
    return map;
  }

  private static Refusal refused(FaultCode code, Kind kind, String id, String why) {
    return new Refusal(new Fault(code, "", id, null, kind.word() + " `" + id + "` " + why));
  }

  @Override
  public void close() {
    // nothing to give back
  }
}
