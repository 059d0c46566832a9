package tamis.api.http;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.BadMessageException;
import org.eclipse.jetty.server.HttpOutput;
import tamis.api.representation.Problem;
import tamis.api.stream.InputLines;
import tamis.api.stream.LineAnswers;
import tamis.api.stream.LineAnswers.Answered;

/**
 * Lines on their way through. Answers are gathered until there are enough of them, or until the
 * caller would be waited for; so memory is the same for any number of lines.
 */
final class StreamedLines {
  private static final int PART = 32 * 1024;

  private final InputStream caller;
  private final HttpOutput out;
  private final LineAnswers<?, ?> answers;
  private final byte[] part = new byte[PART];
  private int gathered;
  private final Duration patience;
  private long wroteAt = System.nanoTime();

  /** The caller no longer reads. */
  private static final class CallerGone extends IOException {
    private static final long serialVersionUID = 1L;

    CallerGone(Throwable cause) {
      super(cause);
    }
  }

  /**
   * @param patience how long the caller may let us wait in all, whatever it sends
   */
  StreamedLines(InputStream caller, HttpOutput out, LineAnswers<?, ?> answers, Duration patience) {
    this.patience = patience;
    this.caller = caller;
    this.out = out;
    this.answers = answers;
  }

  /**
   * Answers all lines; what does not come, or not as HTTP or gzip say, is a problem on its line.
   *
   * @throws IOException if the caller no longer reads
   */
  void copy(LineBody body) throws IOException {
    var reads = new Reads();
    long number = 1;
    try {
      var lines = new InputLines(body.over(reads), answers.lineBytes(), 0);
      try {
        while (lines.next()) {
          if (!lines.isBlank()) {
            send(answers.answer(lines));
          }
        }
      } finally {
        number = Math.max(1, lines.number());
      }
    } catch (CallerGone gone) {
      throw gone;
    } catch (IOException | BadMessageException broken) {
      send(LineAnswers.problem(number, unread(broken)));
    }
    write();
  }

  private static Problem unread(Exception broken) {
    return broken.getCause() instanceof TimeoutException
        ? Problems.plain(408, "the body did not come in time; nothing behind this line was read")
        : Problems.plain(400, "the body did not come whole; nothing behind this line was read");
  }

  private void send(Answered answered) throws CallerGone {
    put(answered.bytes());
    if (gathered == part.length) {
      write();
    }
    part[gathered++] = '\n';
  }

  private void put(byte[] bytes) throws CallerGone {
    for (int from = 0; from < bytes.length; ) {
      if (gathered == part.length) {
        write();
      }
      int count = Math.min(bytes.length - from, part.length - gathered);
      System.arraycopy(bytes, from, part, gathered, count);
      gathered += count;
      from += count;
    }
  }

  private void write() throws CallerGone {
    if (gathered == 0) {
      return;
    }
    try {
      // Only a caller who lets us wait reads too slowly; one whom we let wait does not.
      long waited = System.nanoTime() - wroteAt;
      out.onFlushed(Server.LEAST_BYTES_A_SECOND * (1 + waited / 1_000_000_000));
      out.write(part, 0, gathered);
      out.flush();
    } catch (IOException | BadMessageException gone) {
      throw new CallerGone(gone);
    }
    gathered = 0;
    wroteAt = System.nanoTime();
  }

  /**
   * What the caller sends. Who lets us wait for longer than is patient, and sends next to nothing
   * meanwhile, would hold a place for others; whoever is waited for has all answers so far.
   */
  private final class Reads extends InputStream {
    private long received;
    private long waited;

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      if (caller.available() == 0) {
        write();
      }
      long before = System.nanoTime();
      int count = caller.read(into, from, length);
      waited += System.nanoTime() - before;
      received += Math.max(0, count);
      long seconds = waited / 1_000_000_000;
      boolean drips = received < Server.LEAST_BYTES_A_SECOND * (seconds - patience.toSeconds());
      if (count >= 0 && drips) {
        throw new IOException(new TimeoutException("drips"));
      }
      return count;
    }
  }
}
