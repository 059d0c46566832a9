package tamis.api.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;

/** The directory of a store, held by one program at a time. The system frees it when that ends. */
public final class DataDirectory implements AutoCloseable {
  private static final String STORE = "tamis.db";
  private static final String LOCK = "lock";

  private final Path directory;
  private final FileChannel channel;

  private DataDirectory(Path directory, FileChannel channel) {
    this.directory = directory;
    this.channel = channel;
  }

  /**
   * Takes hold of a directory, which is made if it is not there.
   *
   * @throws UnusableStore if another program holds it, or it cannot be written
   */
  public static DataDirectory hold(Path directory) {
    try {
      Files.createDirectories(directory);
      var channel =
          FileChannel.open(
              directory.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (lock(channel) == null) {
        channel.close();
        throw new UnusableStore(
            directory
                + " is in use by another Tamis: stop it, or name another directory by --data");
      }
      return new DataDirectory(directory, channel);
    } catch (IOException failed) {
      throw new UnusableStore(directory + " cannot be written: " + reason(failed), failed);
    }
  }

  private static @Nullable FileLock lock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException heldHere) {
      return null;
    }
  }

  private static String reason(IOException failed) {
    return failed instanceof java.nio.file.AccessDeniedException
        ? "access is denied"
        : "it is no directory, or its disk takes no files";
  }

  /** The file of the store, there or not. */
  public Path file() {
    return fileIn(directory);
  }

  /** The file of the store in a directory that somebody else may hold. */
  public static Path fileIn(Path directory) {
    return directory.resolve(STORE);
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException harmless) {
      // the lock ends with the program at the latest
    }
  }
}
