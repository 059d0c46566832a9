package tamis.api.command;

import java.nio.file.Files;
import java.time.Clock;
import tamis.api.plugin.Plugins;
import tamis.api.store.DataDirectory;
import tamis.api.store.MemoryStore;
import tamis.api.store.SqlStore;
import tamis.api.store.Store;
import tamis.api.store.UnusableStore;

/** What a calculation at the command line reads. A server may have the store open, too. */
final class Shelves {
  private Shelves() {}

  /** The store that the settings name. */
  static Store named(Settings settings) {
    try {
      var database = settings.database();
      if (database != null) {
        return SqlStore.postgresql(
            database, settings.databaseUser(), settings.databasePassword(), Clock.systemUTC());
      }
      var file = DataDirectory.fileIn(settings.data());
      if (!Files.isRegularFile(file)) {
        throw new WrongUse(settings.data() + " holds no store of Tamis");
      }
      return SqlStore.sqlite(file, Clock.systemUTC());
    } catch (UnusableStore unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    }
  }

  /** A store of its own with the demo data. */
  static Store demo(Plugins plugins) {
    var store = new MemoryStore(Clock.systemUTC());
    new Demo(store, plugins).load();
    return store;
  }
}
