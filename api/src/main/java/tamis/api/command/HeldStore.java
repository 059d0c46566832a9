package tamis.api.command;

import java.nio.file.Files;
import java.time.Clock;
import org.jspecify.annotations.Nullable;
import tamis.api.store.DataDirectory;
import tamis.api.store.SqlStore;
import tamis.api.store.UnusableStore;

/** The store that the settings name, held until it is closed. */
record HeldStore(SqlStore store, @Nullable DataDirectory directory) implements AutoCloseable {

  /**
   * Holds the store alone, as one who writes must.
   *
   * @throws WrongUse if it is in use or cannot be used, in one line
   */
  static HeldStore open(Settings settings) {
    try {
      @Nullable HeldStore shared = shared(settings);
      return shared == null ? alone(DataDirectory.hold(settings.data())) : shared;
    } catch (UnusableStore unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    }
  }

  /**
   * Opens a store that is there, to read it beside a server that may be running.
   *
   * @throws WrongUse if there is none or it cannot be used, in one line
   */
  static HeldStore beside(Settings settings) {
    try {
      @Nullable HeldStore shared = shared(settings);
      if (shared != null) {
        return shared;
      }
      var file = DataDirectory.fileIn(settings.data());
      if (!Files.exists(file)) {
        throw new WrongUse("there is no store in " + settings.data());
      }
      return new HeldStore(SqlStore.sqlite(file, Clock.systemUTC()), null);
    } catch (UnusableStore unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    }
  }

  /** The store in a database, which programs share; null if it is in a directory. */
  private static @Nullable HeldStore shared(Settings settings) {
    @Nullable String database = settings.database();
    return database == null
        ? null
        : new HeldStore(
            SqlStore.postgresql(
                database, settings.databaseUser(), settings.databasePassword(), Clock.systemUTC()),
            null);
  }

  private static HeldStore alone(DataDirectory directory) {
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
