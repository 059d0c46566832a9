package tamis.api.http;

import java.time.Clock;
import tamis.api.store.Document;
import tamis.api.store.Kind;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;

/** Ingredients: the built-in ones, and the shop's own that add to them or replace them. */
final class IngredientHandler {
  private static final DocumentKind<Ingredient> INGREDIENTS =
      new DocumentKind<>(
          Kind.INGREDIENT,
          "/v1/ingredients",
          Ingredient.class,
          Document::of,
          (kitchen, ingredient) -> {},
          () -> BuiltIn.STORE);

  private final Documents<Ingredient> documents;
  private final DocumentLists<Ingredient> lists;

  IngredientHandler(Store store, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.documents = new Documents<>(INGREDIENTS, store, kitchens, bodies, settings);
    this.lists = new DocumentLists<>(INGREDIENTS, store, settings);
  }

  /** The reference ingredients as documents, written out when first asked for. */
  private static final class BuiltIn {
    static final Store STORE = new MemoryStore(Clock.systemUTC());

    static {
      for (var ingredient : ReferenceIngredients.standard().all()) {
        STORE.create(Document.of(ingredient), "engine");
      }
    }
  }

  void register(Routes routes) {
    routes.get("/v1/ingredients", lists::list);
    routes.post("/v1/ingredients", documents::create);
    routes.get("/v1/ingredients/{id}", documents::read);
    routes.put("/v1/ingredients/{id}", documents::replace);
    routes.delete("/v1/ingredients/{id}", documents::remove);
    routes.get("/v1/ingredients/{id}/revisions", lists::revisions);
    routes.get("/v1/ingredients/{id}/revisions/{number}", documents::revision);
  }
}
