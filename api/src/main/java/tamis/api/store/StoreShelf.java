package tamis.api.store;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Shelf;

/** The store as it stood at one revision. */
final class StoreShelf implements Shelf {
  private static final int MOST_NEAR = 500;

  private final Store store;
  private final long revision;
  private @Nullable Map<String, Set<String>> names;

  StoreShelf(Store store, long revision) {
    this.store = store;
    this.revision = revision;
  }

  @Override
  public long revision() {
    return revision;
  }

  @Override
  public @Nullable Formula formula(String id, @Nullable Integer number) {
    @Nullable Stored stored =
        number == null ? asOf(Kind.FORMULA, id) : store.read(Kind.FORMULA, id, number);
    boolean later = stored != null && stored.revision() > revision;
    return record(stored) instanceof Formula formula && !later ? formula : null;
  }

  @Override
  public @Nullable Ingredient ingredient(String id) {
    return record(asOf(Kind.INGREDIENT, id)) instanceof Ingredient ingredient ? ingredient : null;
  }

  private static @Nullable Record record(@Nullable Stored stored) {
    @Nullable Document document = stored == null ? null : stored.document();
    return document == null ? null : document.record();
  }

  @Override
  public synchronized Set<String> ingredientsNamed(String folded) {
    if (names == null) {
      List<Ingredient> all = new ArrayList<>();
      for (Stored stored : store.list(Kind.INGREDIENT, "", Integer.MAX_VALUE, null).rows()) {
        @Nullable Ingredient ingredient = ingredient(stored.id());
        if (ingredient != null) {
          all.add(ingredient);
        }
      }
      names = Shelf.nameIndex(all);
    }
    return names.getOrDefault(folded, Set.of());
  }

  @Override
  public Collection<String> formulaIdsNear(String id) {
    String begin = id.substring(0, Math.min(1, id.length()));
    List<String> near = new ArrayList<>();
    for (Stored stored : store.list(Kind.FORMULA, begin, MOST_NEAR, null).rows()) {
      near.add(stored.id());
    }
    return near;
  }

  private @Nullable Stored asOf(Kind kind, String id) {
    return MemoryStore.newest(store.revisions(kind, id), revision);
  }
}
