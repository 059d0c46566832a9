package tamis.api.command;

import java.time.Clock;
import org.jspecify.annotations.Nullable;
import tamis.api.store.DataDirectory;
import tamis.api.store.SqlStore;
import tamis.api.store.UnusableStore;

/** The store that the settings name, held until it is closed. */
record HeldStore(SqlStore store, @Nullable DataDirectory directory) implements AutoCloseable {

  /**
   * @throws WrongUse if it is in use or cannot be used, in one line
   */
  static HeldStore open(Settings settings) {
    try {
      var database = settings.database();
      if (database != null) {
        return new HeldStore(
            SqlStore.postgresql(
                database, settings.databaseUser(), settings.databasePassword(), Clock.systemUTC()),
            null);
      }
      return inDirectory(DataDirectory.hold(settings.data()));
    } catch (UnusableStore unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    }
  }

  private static HeldStore inDirectory(DataDirectory directory) {
    try {
      return new HeldStore(SqlStore.sqlite(directory.file(), Clock.systemUTC()), directory);
    } catch (UnusableStore unusable) {
      directory.close();
      throw unusable;
    }
  }

  @Override
  public void close() {
    store.close();
    if (directory != null) {
      directory.close();
    }
  }
}
