package tamis.api.stream;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.ResultJson;

/**
 * The records that got no answer: each line is the problem with the record as it came, to be mended
 * and sent again. The file is made when there is the first of them.
 */
final class Rejected implements AutoCloseable {
  private final Path path;
  private @Nullable OutputStream out;

  /** Begins anew: what stands there is told again from records and answers. */
  Rejected(Path path) throws IOException {
    this.path = path;
    Files.deleteIfExists(path);
  }

  void add(byte[] problem, InputLines line) throws IOException {
    var to = out;
    if (to == null) {
      to = new BufferedOutputStream(Files.newOutputStream(path));
      out = to;
    }
    if (line.isTooLong()) {
      to.write(problem);
    } else {
      to.write(problem, 0, problem.length - 1);
      to.write(",\"record\":".getBytes(StandardCharsets.US_ASCII));
      to.write(ResultJson.bytes(new String(line.bytes(), StandardCharsets.UTF_8).strip()));
      to.write('}');
    }
    to.write('\n');
  }

  void flush() throws IOException {
    if (out != null) {
      out.flush();
    }
  }

  @Override
  public void close() throws IOException {
    if (out != null) {
      out.close();
    }
  }
}
