package tamis.api.http;

import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.store.Store;
import tamis.api.store.StoreShelf;
import tamis.engine.kitchen.Pantry;
import tamis.engine.record.Limits;

/** The kitchen as it is now; the same one until something is written. */
final class Kitchens {
  private final Store store;
  private final Pantry.Fittings fittings;
  private volatile @Nullable Now latest;

  /**
   * A kitchen and what it stands on.
   *
   * @param shelf the store at one revision
   * @param kitchen over that shelf
   */
  record Now(StoreShelf shelf, Pantry kitchen) {
    long revision() {
      return shelf.revision();
    }

    long trials() {
      return shelf.trials();
    }
  }

  Kitchens(Store store, Plugins plugins, Limits limits) {
    this.store = store;
    this.fittings = plugins.fittings(limits);
  }

  Pantry now() {
    return latest().kitchen();
  }

  Now latest() {
    var shelf = store.shelf();
    var known = latest;
    if (known == null || known.shelf() != shelf) {
      known = new Now(shelf, new Pantry(shelf, fittings));
      latest = known;
    }
    return known;
  }
}
