package tamis.api.stream;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Path;

/** The lines of a file that belong to a share of it. */
final class Stretch implements AutoCloseable {
  private static final int PART = 1 << 20;

  private final FileChannel file;
  private final long from;
  private final long to;
  private final InputLines lines;

  Stretch(Path path, Share share, int lineBytes) throws IOException {
    file = FileChannel.open(path);
    long size = file.size();
    to = share.to(size);
    long before = 0;
    long start = share.from(size);
    if (start > 0) {
      // A line belongs to the share in which it begins: the rest of one from before is passed over.
      before = newlines(start - 1);
      file.position(start - 1);
      start = start - 1 + passOver();
      before++;
    }
    from = start;
    file.position(from);
    InputStream in = new BufferedInputStream(Channels.newInputStream(file), PART);
    lines = new InputLines(in, lineBytes, before);
  }

  private long newlines(long end) throws IOException {
    var part = ByteBuffer.allocate(PART);
    long count = 0;
    for (long at = 0; at < end; ) {
      part.clear().limit((int) Math.min(PART, end - at));
      int read = file.read(part, at);
      if (read < 0) {
        return count;
      }
      for (int i = 0; i < read; i++) {
        count += part.get(i) == '\n' ? 1 : 0;
      }
      at += read;
    }
    return count;
  }

  private long passOver() throws IOException {
    var part = ByteBuffer.allocate(PART);
    long passed = 0;
    while (file.read(part.clear()) > 0) {
      part.flip();
      while (part.hasRemaining()) {
        passed++;
        if (part.get() == '\n') {
          return passed;
        }
      }
    }
    return passed;
  }

  /** The next line that is not blank, or null behind the last. */
  boolean next() throws IOException {
    while (from + lines.read() < to && lines.next()) {
      if (!lines.isBlank()) {
        return true;
      }
    }
    return false;
  }

  InputLines line() {
    return lines;
  }

  long bytes() {
    return Math.max(0, to - from);
  }

  long read() {
    return Math.min(lines.read(), bytes());
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
