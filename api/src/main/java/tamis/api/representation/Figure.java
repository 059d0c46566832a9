package tamis.api.representation;

/**
 * The characters of a figure that was worked out, to 15 digits: those that a double holds for sure
 * and a cell shows. The rest of 1.1520000000000001 came from arithmetic in twos. Two texts of so
 * few digits are never the same double, so that these are also the fewest that are read back as it.
 */
final class Figure {
  private static final int DIGITS = 15;

  /** Smaller ones have an exponent. */
  private static final double LEAST = 1e-7;

  /** The digits of still smaller ones are left as they are. */
  private static final double LEAST_SURE = 1e-8;

  /** Below this every whole number is a double. */
  private static final double MOST_WHOLE = 1L << 53;

  /** A sign, a zero, a point, six more zeros and the digits. */
  private static final int ROOM = 9 + DIGITS;

  /** Powers of ten that are exact as doubles. */
  private static final double[] POWERS = new double[23];

  /** Tenths, hundredths and so on, down to the least. */
  private static final double[] PARTS = new double[8];

  static {
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = Double.parseDouble("1e" + i);
    }
    for (int i = 0; i < PARTS.length; i++) {
      PARTS[i] = Double.parseDouble("1e-" + i);
    }
  }

  private final char[] chars = new char[ROOM];
  private int from = ROOM;

  /** Makes it this number; false if the number is none that is written so. */
  boolean is(double value) {
    double size = Math.abs(value);
    if (value == Math.rint(value)) {
      if (!(size < MOST_WHOLE)) {
        return false;
      }
      write(value < 0, (long) size, 0);
      return true;
    }
    if (!(size >= LEAST && size < POWERS[DIGITS])) {
      return false;
    }
    int places = places(size);
    write(value < 0, (long) Math.rint(size * POWERS[places]), places);
    return true;
  }

  /** To 15 digits what is too small to be written without an exponent. */
  static double sure(double value) {
    double size = Math.abs(value);
    double power = POWERS[POWERS.length - 1];
    return size >= LEAST_SURE && size < LEAST ? Math.rint(value * power) / power : value;
  }

  /** How many places behind the point the last of all digits has. */
  private static int places(double size) {
    if (size >= 1) {
      int before = 1;
      while (size >= POWERS[before]) {
        before++;
      }
      return DIGITS - before;
    }
    int behind = 1;
    while (size < PARTS[behind]) {
      behind++;
    }
    return DIGITS - 1 + behind;
  }

  private void write(boolean negative, long digits, int places) {
    from = ROOM;
    long left = digits;
    int behind = places;
    if (behind >= 8 && left % 100_000_000 == 0) {
      left /= 100_000_000;
      behind -= 8;
    }
    if (behind >= 4 && left % 10_000 == 0) {
      left /= 10_000;
      behind -= 4;
    }
    while (behind > 0 && left % 10 == 0) {
      left /= 10;
      behind--;
    }
    for (int i = 0; i < behind; i++) {
      left = digit(left);
    }
    if (behind > 0) {
      chars[--from] = '.';
    }
    do {
      left = digit(left);
    } while (left > 0);
    if (negative) {
      chars[--from] = '-';
    }
  }

  /** Writes the last digit and leaves the others. */
  private long digit(long digits) {
    long others = digits / 10;
    chars[--from] = (char) ('0' + (digits - others * 10));
    return others;
  }

  char[] chars() {
    return chars;
  }

  /** Where the figure begins in its characters. */
  int from() {
    return from;
  }

  int length() {
    return ROOM - from;
  }

  @Override
  public String toString() {
    return new String(chars, from, length());
  }
}
