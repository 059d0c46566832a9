package tamis.api.stream;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/**
 * Stands beside the answers as long as some are missing, and says of which run they are. So a run
 * goes on only where it was itself, and no file of anybody else is written over.
 */
final class RunMark implements AutoCloseable {
  private static final int LOOKED_AT = 1 << 20;

  private final Path path;
  private final FileChannel channel;

  private RunMark(Path path, FileChannel channel) {
    this.path = path;
    this.channel = channel;
  }

  /**
   * Marks the run, or finds its mark.
   *
   * @param run what the run is of, in lines
   * @throws Unusable if the answers are of another run, or are being written at this moment
   */
  static RunMark of(Run run) throws IOException {
    var path = beside(run.out(), ".run");
    String told = told(run);
    if (!Files.exists(path)) {
      refuseFull(run.out());
      refuseFull(run.rejected());
      var fresh = beside(run.out(), ".run.new");
      Files.writeString(fresh, told);
      Files.move(fresh, path, StandardCopyOption.ATOMIC_MOVE);
    }
    var channel = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
    try {
      if (!isOurs(channel)) {
        throw new Unusable(run.out() + " is being written by another run");
      }
      if (!Files.readString(path).equals(told)) {
        throw new Unusable(
            run.out()
                + " was begun by a run on other records or in another way; remove it and "
                + path
                + " to begin anew");
      }
    } catch (Unusable unusable) {
      channel.close();
      throw unusable;
    }
    return new RunMark(path, channel);
  }

  private static boolean isOurs(FileChannel channel) throws IOException {
    try {
      @Nullable FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException inThisProgram) {
      return false;
    }
  }

  private static void refuseFull(Path file) throws IOException {
    if (Files.exists(file) && (!Files.isRegularFile(file) || Files.size(file) > 0)) {
      throw new Unusable(file + " is there already; remove it or name another file");
    }
  }

  static Path beside(Path file, String ending) {
    return file.resolveSibling(file.getFileName() + ending);
  }

  private static String told(Run run) throws IOException {
    return "calculation "
        + run.calculation()
        + "\nquery "
        + run.query()
        + "\npart "
        + run.share()
        + "\nrecords "
        + Files.size(run.in())
        + " bytes, the first of them "
        + fingerprint(run.in())
        + "\n";
  }

  private static String fingerprint(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      var hash = MessageDigest.getInstance("SHA-256").digest(in.readNBytes(LOOKED_AT));
      return HexFormat.of().formatHex(hash);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** Every record is answered. */
  void done() throws IOException {
    Files.delete(path);
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
