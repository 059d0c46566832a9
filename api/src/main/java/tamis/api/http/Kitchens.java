package tamis.api.http;

import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.store.Store;
import tamis.engine.kitchen.Pantry;
import tamis.engine.record.Limits;

/** The kitchen as it is now; the same one until something is written. */
final class Kitchens {
  private final Store store;
  private final Pantry.Fittings fittings;
  private volatile @Nullable Pantry latest;

  Kitchens(Store store, Plugins plugins, Limits limits) {
    this.store = store;
    this.fittings = plugins.fittings(limits);
  }

  Pantry now() {
    var shelf = store.shelf();
    var kitchen = latest;
    if (kitchen == null || kitchen.revision() != shelf.revision()) {
      kitchen = new Pantry(shelf, fittings);
      latest = kitchen;
    }
    return kitchen;
  }
}
