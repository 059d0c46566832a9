package tamis.api.stream;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** The whole lines of a file of answers; the last may have been cut off and is then none. */
final class KnownAnswers {
  /** How a problem begins in place of an answer. */
  private static final byte[] PROBLEM = "{\"line\":".getBytes(StandardCharsets.US_ASCII);

  private final InputStream in;
  private final ByteArrayOutputStream problem = new ByteArrayOutputStream();
  private boolean isProblem;
  private long end;

  KnownAnswers(InputStream in) {
    this.in = in;
  }

  boolean next() throws IOException {
    problem.reset();
    isProblem = true;
    long length = 0;
    for (int one = in.read(); one >= 0; one = in.read()) {
      if (one == '\n') {
        isProblem &= length >= PROBLEM.length;
        end += length + 1;
        return true;
      }
      isProblem &= length >= PROBLEM.length || one == PROBLEM[(int) length];
      if (isProblem) {
        problem.write(one);
      }
      length++;
    }
    return false;
  }

  boolean isProblem() {
    return isProblem;
  }

  byte[] problem() {
    return problem.toByteArray();
  }

  /** Where the last whole line ends. */
  long end() {
    return end;
  }
}
