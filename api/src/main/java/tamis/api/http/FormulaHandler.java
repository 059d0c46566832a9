package tamis.api.http;

import java.time.Clock;
import java.util.Objects;
import tamis.api.store.Document;
import tamis.api.store.Kind;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;

/** The shop's formulas. */
final class FormulaHandler {
  private static final Store NONE_BUILT_IN = new MemoryStore(Clock.systemUTC());
  private static final DocumentKind<Formula> FORMULAS =
      new DocumentKind<>(
          Kind.FORMULA,
          "/v1/formulas",
          Formula.class,
          formula -> Document.of(formula, Objects.requireNonNull(formula.id())),
          Pantry::check,
          () -> NONE_BUILT_IN);

  private final Documents<Formula> documents;
  private final DocumentLists<Formula> lists;

  FormulaHandler(Store store, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.documents = new Documents<>(FORMULAS, store, kitchens, bodies, settings);
    this.lists = new DocumentLists<>(FORMULAS, store, settings);
  }

  void register(Routes routes) {
    routes.get("/v1/formulas", lists::list);
    routes.post("/v1/formulas", documents::create);
    routes.get("/v1/formulas/{id}", documents::read);
    routes.put("/v1/formulas/{id}", documents::replace);
    routes.delete("/v1/formulas/{id}", documents::remove);
    routes.get("/v1/formulas/{id}/revisions", lists::revisions);
    routes.get("/v1/formulas/{id}/revisions/{number}", documents::revision);
  }
}
