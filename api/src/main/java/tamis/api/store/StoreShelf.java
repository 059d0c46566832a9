package tamis.api.store;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Shelf;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Trial;

/**
 * The store as it stood at one revision. What was looked up serves the next caller, too, and
 * shelves of later revisions until a document of that kind is written.
 */
public final class StoreShelf implements Shelf {
  private static final int MOST_NEAR = 500;
  private static final int MOST_KEPT = 10_000;

  private final Store store;
  private final Counters.At at;
  private final Map<Kind, Found> found = new EnumMap<>(Kind.class);

  /** What was looked up of one kind, and what holds until one of that kind is written. */
  private record Found(
      Cache<String, Optional<Stored>> documents, Cache<String, Set<String>> named) {
    static Found nothing() {
      return new Found(cache(), cache());
    }

    private static <T> Cache<String, T> cache() {
      return Caffeine.newBuilder().executor(Runnable::run).maximumSize(MOST_KEPT).build();
    }
  }

  StoreShelf(Store store, Counters.At at) {
    this(store, at, kind -> Found.nothing());
  }

  private StoreShelf(Store store, Counters.At at, Function<Kind, Found> found) {
    this.store = store;
    this.at = at;
    for (Kind kind : Kind.values()) {
      this.found.put(kind, found.apply(kind));
    }
  }

  /**
   * The shelf at another revision.
   *
   * @param same kinds of which no document was written between the two
   */
  StoreShelf at(Counters.At other, Predicate<Kind> same) {
    return new StoreShelf(store, other, kind -> same.test(kind) ? found(kind) : Found.nothing());
  }

  Counters.At at() {
    return at;
  }

  private Found found(Kind kind) {
    return Objects.requireNonNull(found.get(kind));
  }

  @Override
  public long revision() {
    return at.revision();
  }

  @Override
  public @Nullable Instant written() {
    return at.written();
  }

  /** The revision over trials. */
  public long trials() {
    return at.trials();
  }

  boolean isAt(Counters.At other) {
    return at.revision() == other.revision() && at.trials() == other.trials();
  }

  @Override
  public @Nullable Formula formula(String id, @Nullable Integer number) {
    @Nullable Stored stored =
        number == null ? now(Kind.FORMULA, id) : store.read(Kind.FORMULA, id, number);
    boolean later = stored != null && stored.revision() > revision();
    return record(stored) instanceof Formula formula && !later ? formula : null;
  }

  @Override
  public @Nullable Ingredient ingredient(String id) {
    boolean isId = Ingredient.isId(id); // most names are none, and need no look-up
    return isId && record(now(Kind.INGREDIENT, id)) instanceof Ingredient ingredient
        ? ingredient
        : null;
  }

  @Override
  public PriceList prices() {
    return record(now(Kind.PRICES, Document.PRICES)) instanceof PriceList prices
        ? prices
        : PriceList.empty();
  }

  @Override
  public @Nullable Trial trial(String id) {
    @Nullable Stored stored = now(Kind.TRIAL, id);
    return stored == null ? null : Trials.asOf(store, stored, trials());
  }

  @Override
  public List<Trial> trialsOf(String formula) {
    List<Trial> all = new ArrayList<>();
    for (String id : store.users(Kind.TRIAL, formula)) {
      @Nullable Trial trial = trial(id);
      if (trial != null && formula.equals(trial.formula().id())) {
        all.add(trial);
      }
    }
    all.sort(Comparator.comparing(Trial::started).thenComparing(Trial::id));
    return all;
  }

  @Override
  public Set<String> ingredientsNamed(String folded) {
    return found(Kind.INGREDIENT).named().get(folded, this::lookUp);
  }

  private Set<String> lookUp(String folded) {
    Set<String> ids = new LinkedHashSet<>();
    for (String id : store.ingredientsNamed(folded)) {
      @Nullable Ingredient ingredient = ingredient(id);
      if (ingredient != null && Terms.names(ingredient).contains(folded)) {
        ids.add(id);
      }
    }
    return ids;
  }

  @Override
  public Collection<String> formulaIdsNear(String id) {
    String begin = id.substring(0, Math.min(1, id.length()));
    return store.list(Kind.FORMULA, begin, MOST_NEAR, null).rows().stream()
        .map(Listed.Row::id)
        .toList();
  }

  private @Nullable Stored now(Kind kind, String id) {
    long until = kind.hasOwnCount() ? trials() : revision();
    return found(kind)
        .documents()
        .get(id, one -> Optional.ofNullable(store.readAsOf(kind, one, until)))
        .orElse(null);
  }

  private static @Nullable Record record(@Nullable Stored stored) {
    @Nullable Document document = stored == null ? null : stored.document();
    return document == null ? null : document.record();
  }
}
