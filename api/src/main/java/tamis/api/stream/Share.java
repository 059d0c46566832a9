package tamis.api.stream;

import org.jspecify.annotations.Nullable;

/**
 * A share of a file, for several machines that go through it together: each takes the lines that
 * begin in its stretch of the bytes. The answers of all shares, one behind the other, are those of
 * the whole file.
 *
 * @param number of the share, from 1
 * @param of how many there are
 */
public record Share(int number, int of) {
  public static final Share WHOLE = new Share(1, 1);

  private static final int MOST = 10_000;

  /** The share that {@code 2/5} stands for, or null if the text stands for none. */
  public static @Nullable Share parse(String text) {
    if (!text.matches("[1-9][0-9]{0,4}/[1-9][0-9]{0,4}")) {
      return null;
    }
    int slash = text.indexOf('/');
    int number = Integer.parseInt(text.substring(0, slash));
    int of = Integer.parseInt(text.substring(slash + 1));
    return number <= of && of <= MOST ? new Share(number, of) : null;
  }

  /** Where the stretch begins in so many bytes. */
  long from(long bytes) {
    return at(bytes, number - 1);
  }

  /** Where the next stretch begins. */
  long to(long bytes) {
    return at(bytes, number);
  }

  private long at(long bytes, int shares) {
    return bytes / of * shares + bytes % of * shares / of;
  }

  @Override
  public String toString() {
    return number + "/" + of;
  }
}
