package tamis.api.store;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tamis.engine.trial.Observation;

/** Documents in memory, gone when the program ends. Writes take turns; reads do not wait. */
public final class MemoryStore implements Store {
  private final Clock clock;
  private final Map<Kind, NavigableMap<String, List<Stored>>> documents = new EnumMap<>(Kind.class);
  private final Map<Place, List<Observed>> observations = new ConcurrentHashMap<>();
  private volatile Counters.At at = new Counters.At(0, 0, null);
  private volatile StoreShelf shelf = new StoreShelf(this, at);

  private record Place(String trial, int number) {}

  public MemoryStore(Clock clock) {
    this.clock = clock;
    for (Kind kind : Kind.values()) {
      documents.put(kind, new ConcurrentSkipListMap<>());
    }
  }

  @Override
  public long revision() {
    return at.revision();
  }

  @Override
  public long trials() {
    return at.trials();
  }

  @Override
  public boolean answers() {
    return true;
  }

  @Override
  public @Nullable Stored read(Kind kind, String id) {
    return readAsOf(kind, id, Long.MAX_VALUE);
  }

  @Override
  public @Nullable Stored read(Kind kind, String id, int number) {
    List<Stored> all = revisions(kind, id);
    return number >= 1 && number <= all.size() ? all.get(number - 1) : null;
  }

  @Override
  public @Nullable Stored readAsOf(Kind kind, String id, long asOf) {
    return newest(revisions(kind, id), asOf);
  }

  /** The newest revision that was written up to {@code revision}, or null if it was deleted. */
  private static @Nullable Stored newest(List<Stored> all, long revision) {
    for (int i = all.size() - 1; i >= 0; i--) {
      if (all.get(i).revision() <= revision) {
        return all.get(i).isDeleted() ? null : all.get(i);
      }
    }
    return null;
  }

  @Override
  public List<Stored> revisions(Kind kind, String id) {
    return of(kind).getOrDefault(id, List.of());
  }

  @Override
  public Listed list(Kind kind, String words, int limit, @Nullable String after) {
    Set<String> wanted = Terms.split(List.of(words));
    NavigableMap<String, List<Stored>> all = of(kind);
    List<Listed.Row> rows = new ArrayList<>();
    for (List<Stored> one : (after == null ? all : all.tailMap(after, false)).values()) {
      @Nullable Stored newest = newest(one, Long.MAX_VALUE);
      @Nullable Document document = newest == null ? null : newest.document();
      if (newest != null && document != null && hasAll(document, wanted)) {
        rows.add(new Listed.Row(newest.id(), document.title(), newest.number()));
        if (rows.size() > limit) {
          break;
        }
      }
    }
    return Listed.of(rows, limit);
  }

  private static boolean hasAll(Document document, Set<String> wanted) {
    return wanted.isEmpty()
        || wanted.stream()
            .allMatch(begin -> document.words().stream().anyMatch(word -> word.startsWith(begin)));
  }

  @Override
  public Collection<String> users(Kind kind, String formula) {
    return having(kind, document -> document.uses().contains(formula));
  }

  @Override
  public Collection<String> ingredientsNamed(String folded) {
    return having(Kind.INGREDIENT, document -> Terms.names(document.record()).contains(folded));
  }

  private List<String> having(Kind kind, Predicate<Document> wanted) {
    return of(kind).entrySet().stream()
        .filter(entry -> entry.getValue().stream().anyMatch(one -> hasLiving(one, wanted)))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static boolean hasLiving(Stored stored, Predicate<Document> wanted) {
    @Nullable Document document = stored.document();
    return document != null && wanted.test(document);
  }

  @Override
  public synchronized Stored create(Document document, String author) {
    if (read(document.kind(), document.id()) != null) {
      throw StoreFaults.exists(document.kind(), document.id());
    }
    Uses.refuseMissing(this, document);
    return write(document.kind(), document.id(), document, author);
  }

  @Override
  public synchronized Stored replace(Document document, int expected, String author) {
    current(document.kind(), document.id(), expected);
    Uses.refuseMissing(this, document);
    return write(document.kind(), document.id(), document, author);
  }

  @Override
  public synchronized Stored replaceTrial(Document trial, int expected, int seen, String author) {
    int came = observations(trial.id(), expected).size();
    if (came != seen) {
      throw StoreFaults.moreObserved(trial.id(), came, seen);
    }
    return replace(trial, expected, author);
  }

  @Override
  public synchronized void delete(Kind kind, String id, int expected, String author) {
    current(kind, id, expected);
    if (kind == Kind.FORMULA) {
      List<String> users = Uses.now(this, id);
      if (!users.isEmpty()) {
        throw StoreFaults.inUse(kind, id, users);
      }
    }
    write(kind, id, null, author);
  }

  private void current(Kind kind, String id, int expected) {
    @Nullable Stored now = read(kind, id);
    if (now == null || now.number() != expected) {
      throw StoreFaults.notCurrent(kind, id, now, expected);
    }
  }

  private Stored write(Kind kind, String id, @Nullable Document document, String author) {
    List<Stored> before = revisions(kind, id);
    Instant moment = Instant.now(clock);
    Counters.At next = at.after(kind, moment);
    long reached = kind.hasOwnCount() ? next.trials() : next.revision();
    Stored stored = new Stored(id, before.size() + 1, reached, moment, author, document);
    List<Stored> after = new ArrayList<>(before);
    after.add(stored);
    of(kind).put(id, List.copyOf(after));
    at = next;
    return stored;
  }

  @Override
  public List<Observed> observations(String trial, int number) {
    return observations.getOrDefault(new Place(trial, number), List.of());
  }

  @Override
  public synchronized Observed observe(String trial, Observation given, String author) {
    @Nullable Stored stored = read(Kind.TRIAL, trial);
    if (stored == null) {
      throw StoreFaults.notCurrent(Kind.TRIAL, trial, null, 0);
    }
    List<Observed> before = observations(trial, stored.number());
    @Nullable Observed same =
        before.stream()
            .filter(one -> one.observation().id().equals(given.id()))
            .findFirst()
            .orElse(null);
    @Nullable Observed known = Trials.known(stored, given, same, before.size());
    if (known != null) {
      return new Observed(
          known.observation(), known.revision(), known.written(), known.author(), false);
    }
    Instant moment = Instant.now(clock);
    Counters.At next = at.after(Kind.TRIAL, moment);
    Observed observed = new Observed(given, next.trials(), moment, author, true);
    List<Observed> after = new ArrayList<>(before);
    after.add(observed);
    observations.put(new Place(trial, stored.number()), List.copyOf(after));
    at = next;
    return observed;
  }

  @Override
  public StoreShelf shelf() {
    StoreShelf known = shelf;
    Counters.At now = at;
    if (!known.isAt(now)) {
      known = new StoreShelf(this, now);
      shelf = known;
    }
    return known;
  }

  private NavigableMap<String, List<Stored>> of(Kind kind) {
    NavigableMap<String, List<Stored>> map = documents.get(kind);
    if (map == null) {
      throw new IllegalStateException("no documents of kind " + kind);
    }
    return map;
  }

  @Override
  public void close() {
    // nothing to give back
  }
}
