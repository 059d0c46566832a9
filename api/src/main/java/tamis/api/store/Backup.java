package tamis.api.store;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;

/**
 * Backups: of a SQLite store one SQLite file, of a PostgreSQL store a dump. Either is taken in one
 * transaction while others go on writing, and is there whole or not at all.
 */
public final class Backup {
  private static final byte[] SQLITE_BEGIN =
      "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private Backup() {}

  /**
   * @throws UnusableStore if the file is there already or cannot be written
   */
  public static void write(SqlStore store, Path file) {
    if (Files.exists(file)) {
      throw new UnusableStore(file + " exists already: name another file");
    }
    @Nullable Path folder = file.toAbsolutePath().getParent();
    if (folder == null || !Files.isWritable(folder)) {
      throw new UnusableStore(file + " cannot be written: " + folder + " is no folder to write to");
    }
    Path part = part(file);
    try {
      Files.deleteIfExists(part);
      if (store.database().dialect() == Dialect.SQLITE) {
        store.database().read(handle -> handle.execute("VACUUM INTO ?", part.toString()));
        SqliteFile.check(part);
      } else {
        try (var out = new BufferedOutputStream(Files.newOutputStream(part))) {
          Dump.write(store, out);
        }
      }
      moved(part, file);
    } catch (IOException | UncheckedIOException failed) {
      throw new UnusableStore(file + " cannot be written", failed);
    }
  }

  /** Whether a backup is one of a SQLite store; else it is a dump. */
  static boolean isSqlite(Path backup) throws IOException {
    try (var in = Files.newInputStream(backup)) {
      return Arrays.equals(in.readNBytes(SQLITE_BEGIN.length), SQLITE_BEGIN);
    }
  }

  /**
   * Puts a backup in the place of the store of a directory.
   *
   * @throws UnusableStore if the backup cannot be used, or the store is there and is not to be
   *     replaced; what was there is then as it was
   * @throws Load.Rejected if the backup is a dump with lines that cannot be kept
   */
  public static void restore(Path backup, DataDirectory directory, boolean replace) {
    Path file = directory.file();
    Path part = part(file);
    try {
      if (Files.exists(file) && !replace) {
        refuseFilled(file);
      }
      remove(part);
      if (isSqlite(backup)) {
        copy(backup, part);
      } else {
        try (var store = SqlStore.sqlite(part, Clock.systemUTC());
            var in = new BufferedInputStream(Files.newInputStream(backup))) {
          Load.into(store, in, false);
        }
      }
      foldIn(file);
      moved(part, file);
    } catch (IOException | SQLException failed) {
      throw new UnusableStore(backup + " cannot be restored: not readable, or damaged", failed);
    } finally {
      removeLeft(part);
    }
  }

  /** Fills a PostgreSQL store from a backup of either kind. */
  public static void restore(Path backup, SqlStore store, boolean replace) {
    @Nullable Path copy = null;
    try {
      if (isSqlite(backup)) {
        copy = Files.createTempDirectory("tamis-restore");
        Path file = copy.resolve("backup.db");
        copy(backup, file);
        Path dump = copy.resolve("backup.ndjson");
        try (var opened = SqlStore.sqlite(file, Clock.systemUTC());
            var out = new BufferedOutputStream(Files.newOutputStream(dump))) {
          Dump.write(opened, out);
        }
        load(dump, store, replace);
      } else {
        load(backup, store, replace);
      }
    } catch (IOException | SQLException failed) {
      throw new UnusableStore(backup + " cannot be restored: not readable, or damaged", failed);
    } finally {
      removeAll(copy);
    }
  }

  private static void load(Path dump, SqlStore store, boolean replace) throws IOException {
    try (var in = new BufferedInputStream(Files.newInputStream(dump))) {
      Load.into(store, in, replace);
    }
  }

  private static void refuseFilled(Path file) {
    try (var store = SqlStore.sqlite(file, Clock.systemUTC())) {
      if (store.database().read(Load::isFilled)) {
        throw new UnusableStore(
            "the store holds documents; --replace puts the backup in their place");
      }
    }
  }

  /** Reads a store, checks it, and writes it anew: what it had not yet folded in comes along. */
  private static void copy(Path backup, Path part) throws SQLException {
    SqliteFile.check(backup);
    var config = new SQLiteConfig();
    config.setReadOnly(true);
    try (var connection = config.createConnection("jdbc:sqlite:" + backup);
        var statement = connection.prepareStatement("VACUUM INTO ?")) {
      statement.setString(1, part.toString());
      statement.execute();
    }
    SqliteFile.check(part);
  }

  /** Leaves nothing beside the old file that would be taken for a part of the new one. */
  private static void foldIn(Path file) throws IOException {
    if (Files.exists(file)) {
      try {
        SqlStore.sqlite(file, Clock.systemUTC()).close();
      } catch (UnusableStore damaged) {
        // a damaged store is what a backup is for
      }
    }
    Files.deleteIfExists(beside(file, "-wal"));
    Files.deleteIfExists(beside(file, "-shm"));
  }

  private static void remove(Path file) throws IOException {
    for (String end : new String[] {"", "-wal", "-shm"}) {
      Files.deleteIfExists(beside(file, end));
    }
  }

  private static void removeLeft(Path part) {
    try {
      remove(part);
    } catch (IOException left) {
      // it is taken away before the next use
    }
  }

  private static void removeAll(@Nullable Path directory) {
    if (directory == null) {
      return;
    }
    try (var files = Files.list(directory)) {
      for (Path file : files.toList()) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(directory);
    } catch (IOException left) {
      // a file of temporary things that stays does no harm
    }
  }

  private static Path part(Path file) {
    return beside(file, ".part");
  }

  private static Path beside(Path file, String end) {
    return file.resolveSibling(file.getFileName() + end);
  }

  /** The new file is on the disk before it takes its name, and the name before this returns. */
  private static void moved(Path part, Path file) throws IOException {
    try (var channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    Path parent = file.toAbsolutePath().getParent();
    if (parent != null && System.getProperty("file.separator").equals("/")) {
      try (var channel = FileChannel.open(parent, StandardOpenOption.READ)) {
        channel.force(true);
      }
    }
  }
}
