package tamis.api.store;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Shelf;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Trial;

/** The store as it stood at one revision. What was looked up serves the next caller, too. */
public final class StoreShelf implements Shelf {
  private static final int MOST_NEAR = 500;
  private static final int MOST_KEPT = 10_000;

  private final Store store;
  private final Counters.At at;
  private final Cache<Place, Optional<Stored>> found =
      Caffeine.newBuilder().maximumSize(MOST_KEPT).build();
  private final Cache<String, Set<String>> named =
      Caffeine.newBuilder().maximumSize(MOST_KEPT).build();

  private record Place(Kind kind, String id) {}

  StoreShelf(Store store, Counters.At at) {
    this.store = store;
    this.at = at;
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
    return named.get(folded, this::lookUp);
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
    return found.get(new Place(kind, id), this::find).orElse(null);
  }

  private Optional<Stored> find(Place place) {
    long until = place.kind().hasOwnCount() ? trials() : revision();
    return Optional.ofNullable(store.readAsOf(place.kind(), place.id(), until));
  }

  private static @Nullable Record record(@Nullable Stored stored) {
    @Nullable Document document = stored == null ? null : stored.document();
    return document == null ? null : document.record();
  }
}
