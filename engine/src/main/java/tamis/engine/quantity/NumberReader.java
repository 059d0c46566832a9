package tamis.engine.quantity;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Reads the number at the start of a quantity: decimals, vulgar fractions, mixed numbers, unicode
 * fractions, number words, and ranges of these.
 */
final class NumberReader {
  private static final int MOST_DIGITS = 40;
  private static final int DIGITS_OF_AN_INT = 9;

  private final Cursor cursor;

  private NumberReader(Cursor cursor) {
    this.cursor = cursor;
  }

  /**
   * A number or a range, and what follows it.
   *
   * @param unit the rest of the text, with single plain spaces; empty if there is none
   */
  record Read(double low, double high, String unit) {}

  /**
   * @param text with single plain spaces, as {@link Cursor#spaced} makes it
   * @throws Refusal if the text does not begin with a number
   */
  static Read read(String text) {
    Cursor cursor = new Cursor(text);
    NumberReader reader = new NumberReader(cursor);
    double low = reader.number();
    double high = reader.rangeMark() ? reader.number() : low;
    if (high < low) {
      throw reader.unreadable("the range runs backwards");
    }
    return new Read(low, high, cursor.rest());
  }

  private double number() {
    cursor.skipSpace();
    boolean negative = sign();
    double value = Character.isLetter(cursor.peek(0)) ? worded() : figured();
    return negative ? -value : value;
  }

  private boolean sign() {
    char sign = cursor.peek(0);
    if (sign == '-' || sign == '−' || sign == '+') {
      cursor.skip(1);
      return sign != '+';
    }
    return false;
  }

  private double worded() {
    @Nullable Double value = NumberWords.read(cursor);
    if (value == null) {
      throw unreadable("no number that is read here");
    }
    return value;
  }

  private double figured() {
    @Nullable Double alone = unicodeFraction();
    if (alone != null) {
      return alone;
    }
    double first = decimal();
    if (isSlash(cursor.peek(0))) {
      cursor.skip(1);
      return over(first, decimal());
    }
    return first + fractionAfter();
  }

  /** The fraction of a mixed number: {@code 1½}, {@code 1 1/2}, {@code 1-1/2}; else 0. */
  private double fractionAfter() {
    int start = cursor.mark();
    char next = cursor.peek(1);
    if (cursor.peek(0) == '-' && (Cursor.isDigit(next) || VulgarFractions.is(next))) {
      cursor.skip(1);
    } else if (!cursor.skipWord(" and ") && !cursor.skipWord(" & ")) {
      cursor.skipSpace();
    }
    @Nullable Double unicode = unicodeFraction();
    if (unicode != null) {
      return unicode;
    }
    int digits = cursor.mark();
    cursor.skipDigits();
    int length = cursor.mark() - digits;
    if (length > 0
        && length <= MOST_DIGITS
        && isSlash(cursor.peek(0))
        && Cursor.isDigit(cursor.peek(1))) {
      double above = value(cursor.since(digits));
      cursor.skip(1);
      double below = decimal();
      if (above < below) {
        return over(above, below);
      }
    }
    cursor.back(start);
    return 0;
  }

  private @Nullable Double unicodeFraction() {
    char c = cursor.peek(0);
    if (!VulgarFractions.is(c)) {
      return null;
    }
    cursor.skip(1);
    return VulgarFractions.value(c);
  }

  private double over(double above, double below) {
    if (below == 0) {
      throw unreadable("a fraction over zero");
    }
    return above / below;
  }

  private double decimal() {
    int start = cursor.mark();
    cursor.skipDigits();
    int digits = cursor.mark() - start;
    if (cursor.peek(0) == '.') {
      cursor.skip(1);
      int point = cursor.mark();
      cursor.skipDigits();
      if (cursor.mark() == point) {
        throw unreadable("a point with no digit after it");
      }
      digits += cursor.mark() - point;
      if (cursor.peek(0) == '.' && Cursor.isDigit(cursor.peek(1))) {
        throw unreadable("two points in a number");
      }
    }
    if (cursor.peek(0) == ',' && Cursor.isDigit(cursor.peek(1))) {
      throw strayComma();
    }
    if (digits == 0) {
      throw unreadable("no number");
    }
    if (digits > MOST_DIGITS) {
      throw tooManyDigits(digits);
    }
    skipExponent();
    return value(cursor.since(start));
  }

  /** Short whole numbers, as most are, without the way over decimal fractions. */
  private static double value(String text) {
    int whole = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!Cursor.isDigit(c) || i >= DIGITS_OF_AN_INT) {
        return Double.parseDouble(text);
      }
      whole = 10 * whole + (c - '0');
    }
    return whole;
  }

  private void skipExponent() {
    boolean marked = cursor.peek(0) == 'e' || cursor.peek(0) == 'E';
    boolean signed = cursor.peek(1) == '-' || cursor.peek(1) == '+';
    if (marked && Cursor.isDigit(cursor.peek(signed ? 2 : 1))) {
      cursor.skip(2);
      cursor.skipDigits();
    }
  }

  /** Goes past {@code -}, {@code to} or {@code or} if a number follows. */
  private boolean rangeMark() {
    int start = cursor.mark();
    if (cursor.skipWord(" to ") || cursor.skipWord(" or ")) {
      if (figureFollows() || NumberWords.here(cursor)) {
        return true;
      }
    } else {
      cursor.skipSpace();
      char mark = cursor.peek(0);
      if (mark == '-' || mark == '–' || mark == '—') {
        cursor.skip(1);
        cursor.skipSpace();
        if (figureFollows()) {
          return true;
        }
      }
    }
    cursor.back(start);
    return false;
  }

  private boolean figureFollows() {
    char next = cursor.peek(0);
    return Cursor.isDigit(next)
        || (next == '.' && Cursor.isDigit(cursor.peek(1)))
        || VulgarFractions.is(next);
  }

  private static boolean isSlash(char c) {
    return c == '/' || c == '\u2044';
  }

  private Refusal unreadable(String why) {
    return refused(
        FaultCode.UNREADABLE_QUANTITY,
        "a number and a unit, for example 2 1/4 cup, 1½ tbsp or 227 g",
        "`" + cursor.text() + "` is not readable as a quantity: " + why);
  }

  private Refusal strayComma() {
    return refused(
        FaultCode.STRAY_COMMA,
        "a decimal point",
        "`" + cursor.text() + "` has a comma in its number; write a decimal point and no grouping");
  }

  private Refusal tooManyDigits(int digits) {
    return refused(
        FaultCode.TOO_MANY_DIGITS,
        "at most " + MOST_DIGITS + " digits",
        "a number of " + digits + " digits; at most " + MOST_DIGITS + " are read");
  }

  private Refusal refused(FaultCode code, String allowed, String message) {
    return new Refusal(new Fault(code, "", cursor.text(), allowed, message));
  }
}
