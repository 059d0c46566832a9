package tamis.api.command;

import java.nio.file.Files;
import java.time.Clock;
import tamis.api.store.DataDirectory;
import tamis.api.store.SqlStore;
import tamis.api.store.Store;
import tamis.api.store.UnusableStore;

/** The store that a calculation reads; only reads, so a server may have it open. */
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
}
