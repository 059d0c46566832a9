package tamis.api.stream;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/**
 * The lines of a stream of bytes, one at a time. Of a line that is too long only the fact is kept:
 * a line without end takes no more memory than any other.
 */
public final class InputLines {
  private static final int PART = 64 * 1024;
  private static final byte[] NOTHING = {};

  private final InputStream in;
  private final int longest;
  private final byte[] part = new byte[PART];
  private int from;
  private int end;

  private byte[] line = NOTHING;
  private int length;
  private boolean tooLong;
  private boolean blank;
  private long number;
  private long read;

  /**
   * @param longest bytes of a line, its end not counted
   * @param before how many lines were read before the first of these
   */
  public InputLines(InputStream in, int longest, long before) {
    this.in = in;
    this.longest = longest;
    this.number = before;
  }

  /** Goes on to the next line; false if there is none. The last one may lack its end. */
  public boolean next() throws IOException {
    length = 0;
    tooLong = false;
    blank = true;
    boolean any = false;
    number++;
    while (from < end || fill()) {
      any = true;
      int stop = newline();
      take(stop);
      if (stop < end) {
        from = stop + 1;
        read++;
        return true;
      }
      from = end;
    }
    if (!any) {
      number--;
    }
    return any;
  }

  private boolean fill() throws IOException {
    int count = in.read(part, 0, part.length);
    from = 0;
    end = Math.max(count, 0);
    return count > 0;
  }

  private int newline() {
    int at = from;
    while (at < end && part[at] != '\n') {
      at++;
    }
    return at;
  }

  private void take(int stop) {
    int more = stop - from;
    read += more;
    for (int at = from; blank && at < stop; at++) {
      blank = part[at] == ' ' || part[at] == '\t' || part[at] == '\r';
    }
    tooLong |= more > longest - length;
    if (tooLong) {
      line = NOTHING;
      length = 0;
      return;
    }
    if (length + more > line.length) {
      line = Arrays.copyOf(line, Math.max(length + more, Math.min(2 * line.length, longest)));
    }
    System.arraycopy(part, from, line, length, more);
    length += more;
  }

  /** Where the line stands, counted from 1; of the one that could not be read to its end, too. */
  public long number() {
    return number;
  }

  /** Whether nothing stands in it but white space. */
  public boolean isBlank() {
    return blank;
  }

  public boolean isTooLong() {
    return tooLong;
  }

  /** What the line holds, without its end; nothing if it is too long. */
  public byte[] bytes() {
    return Arrays.copyOf(line, length);
  }

  /** Its bytes are the first {@link #length} of these, until the next line is gone to. */
  byte[] shared() {
    return line;
  }

  int length() {
    return length;
  }

  /** Bytes of all lines that were gone to, with their ends. */
  public long read() {
    return read;
  }
}
