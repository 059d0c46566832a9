package tamis.engine.quantity;

import java.util.Locale;
import java.util.Map;
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
  private static final Map<Character, Double> FRACTIONS =
      Map.ofEntries(
          Map.entry('½', 1 / 2.0),
          Map.entry('⅓', 1 / 3.0),
          Map.entry('⅔', 2 / 3.0),
          Map.entry('¼', 1 / 4.0),
          Map.entry('¾', 3 / 4.0),
          Map.entry('⅕', 1 / 5.0),
          Map.entry('⅖', 2 / 5.0),
          Map.entry('⅗', 3 / 5.0),
          Map.entry('⅘', 4 / 5.0),
          Map.entry('⅙', 1 / 6.0),
          Map.entry('⅚', 5 / 6.0),
          Map.entry('⅐', 1 / 7.0),
          Map.entry('⅛', 1 / 8.0),
          Map.entry('⅜', 3 / 8.0),
          Map.entry('⅝', 5 / 8.0),
          Map.entry('⅞', 7 / 8.0),
          Map.entry('⅑', 1 / 9.0),
          Map.entry('⅒', 1 / 10.0));
  private static final Map<String, Double> WORDS =
      Map.ofEntries(
          Map.entry("a", 1.0),
          Map.entry("an", 1.0),
          Map.entry("one", 1.0),
          Map.entry("two", 2.0),
          Map.entry("three", 3.0),
          Map.entry("four", 4.0),
          Map.entry("five", 5.0),
          Map.entry("six", 6.0),
          Map.entry("seven", 7.0),
          Map.entry("eight", 8.0),
          Map.entry("nine", 9.0),
          Map.entry("ten", 10.0),
          Map.entry("eleven", 11.0),
          Map.entry("twelve", 12.0),
          Map.entry("fifteen", 15.0),
          Map.entry("sixteen", 16.0),
          Map.entry("twenty", 20.0),
          Map.entry("twenty-four", 24.0));
  private static final Map<String, Double> PARTS =
      Map.ofEntries(
          Map.entry("half", 1 / 2.0),
          Map.entry("halves", 1 / 2.0),
          Map.entry("third", 1 / 3.0),
          Map.entry("thirds", 1 / 3.0),
          Map.entry("quarter", 1 / 4.0),
          Map.entry("quarters", 1 / 4.0),
          Map.entry("fourth", 1 / 4.0),
          Map.entry("fourths", 1 / 4.0),
          Map.entry("eighth", 1 / 8.0),
          Map.entry("eighths", 1 / 8.0));

  private final String text;
  private int at;

  private NumberReader(String text) {
    this.text = text;
  }

  /** A number or a range, and where in the text it ends. */
  record Read(double low, double high, int end) {}

  /**
   * @throws Refusal if the text does not begin with a number
   */
  static Read read(String text) {
    NumberReader reader = new NumberReader(text);
    double low = reader.number();
    int end = reader.at;
    if (!reader.rangeMark()) {
      return new Read(low, low, end);
    }
    double high = reader.number();
    if (!(high >= low)) {
      throw reader.unreadable("the range runs backwards");
    }
    return new Read(low, high, reader.at);
  }

  private double number() {
    skipSpaces();
    boolean negative = sign();
    double value = Character.isLetter(peek(0)) ? worded() : figured();
    return negative ? -value : value;
  }

  private boolean sign() {
    char sign = peek(0);
    if (sign == '-' || sign == '−' || sign == '+') {
      at++;
      return sign != '+';
    }
    return false;
  }

  private double figured() {
    @Nullable Double alone = FRACTIONS.get(peek(0));
    if (alone != null) {
      at++;
      return alone;
    }
    double first = decimal();
    if (isSlash(peek(0))) {
      at++;
      return over(first, decimal());
    }
    return first + fractionAfter();
  }

  /** The fraction of a mixed number: {@code 1½}, {@code 1 1/2}, {@code 1-1/2}; else 0. */
  private double fractionAfter() {
    int start = at;
    boolean hyphen = peek(0) == '-' && Character.isDigit(peek(1));
    if (hyphen) {
      at++;
    } else {
      skipSpaces();
    }
    @Nullable Double unicode = FRACTIONS.get(peek(0));
    if (unicode != null) {
      at++;
      return unicode;
    }
    int digits = at;
    while (isDigit(peek(0)) && at - digits < MOST_DIGITS) {
      at++;
    }
    if (at > digits && isSlash(peek(0)) && isDigit(peek(1))) {
      double above = Double.parseDouble(text.substring(digits, at));
      at++;
      double below = decimal();
      if (above < below) {
        return over(above, below);
      }
    }
    at = start;
    return 0;
  }

  private double over(double above, double below) {
    if (below == 0) {
      throw unreadable("a fraction over zero");
    }
    return above / below;
  }

  private double decimal() {
    int start = at;
    while (isDigit(peek(0)) || (peek(0) == '.' && isDigit(peek(1)))) {
      at++;
    }
    if (at > start && peek(0) == '.' && !isDigit(peek(1))) {
      throw unreadable("a point with no digit after it");
    }
    if (peek(0) == ',' && isDigit(peek(1))) {
      throw new Refusal(
          new Fault(
              FaultCode.STRAY_COMMA,
              "",
              text,
              "a decimal point",
              "`" + text + "` has a comma in its number; write a decimal point and no grouping"));
    }
    int mantissa = at;
    exponent();
    if (mantissa - start > MOST_DIGITS) {
      throw new Refusal(
          new Fault(
              FaultCode.TOO_MANY_DIGITS,
              "",
              text,
              "at most " + MOST_DIGITS + " digits",
              "a number of "
                  + (mantissa - start)
                  + " digits; at most "
                  + MOST_DIGITS
                  + " are read"));
    }
    try {
      return Double.parseDouble(text.substring(start, at));
    } catch (NumberFormatException unreadable) {
      throw unreadable("no number");
    }
  }

  private void exponent() {
    if ((peek(0) == 'e' || peek(0) == 'E')
        && (isDigit(peek(1)) || ((peek(1) == '-' || peek(1) == '+') && isDigit(peek(2))))) {
      at += 2;
      while (isDigit(peek(0))) {
        at++;
      }
    }
  }

  private double worded() {
    String first = word();
    @Nullable Double part = PARTS.get(first);
    if (part != null) {
      skipArticle();
      return part;
    }
    @Nullable Double whole = WORDS.get(first);
    if (whole == null) {
      throw unreadable("no number that is read here");
    }
    int afterWhole = at;
    String next = word();
    @Nullable Double partOf = PARTS.get(next.startsWith("-") ? next.substring(1) : next);
    if (partOf != null) {
      skipArticle();
      return whole * partOf;
    }
    if (next.equals("and")) {
      String count = word();
      @Nullable Double counted = WORDS.get(count);
      String name = counted == null ? count : word();
      @Nullable Double fraction = PARTS.get(name);
      if (fraction != null) {
        return whole + (counted == null ? 1 : counted) * fraction;
      }
    }
    at = afterWhole;
    return whole;
  }

  /** After "half": "half a cup", "half of a cup". */
  private void skipArticle() {
    int start = at;
    String next = word();
    if (next.equals("of")) {
      start = at;
      next = word();
    }
    if (!next.equals("a") && !next.equals("an")) {
      at = start;
    }
  }

  /** The next word in lower case; "one-half" is two words. */
  private String word() {
    skipSpaces();
    if (peek(0) == '-' && Character.isLetter(peek(1))) {
      at++;
    }
    int start = at;
    while (Character.isLetter(peek(0))) {
      at++;
    }
    String word = text.substring(start, at).toLowerCase(Locale.ROOT);
    if (word.equals("twenty") && text.startsWith("-four", at)) {
      at += 5;
      return "twenty-four";
    }
    return word;
  }

  private boolean rangeMark() {
    int start = at;
    skipSpaces();
    char mark = peek(0);
    if (mark == '-' || mark == '–' || mark == '—') {
      at++;
      skipSpaces();
      if (isDigit(peek(0)) || FRACTIONS.containsKey(peek(0))) {
        return true;
      }
    } else if (text.startsWith("to ", at) && at > start) {
      at += 3;
      skipSpaces();
      if (isDigit(peek(0)) || FRACTIONS.containsKey(peek(0)) || wordIsNumber()) {
        return true;
      }
    }
    at = start;
    return false;
  }

  private boolean wordIsNumber() {
    int start = at;
    String next = word();
    at = start;
    return WORDS.containsKey(next) || PARTS.containsKey(next);
  }

  private void skipSpaces() {
    while (at < text.length()
        && (Character.isWhitespace(text.charAt(at)) || text.charAt(at) == '\u00a0')) {
      at++;
    }
  }

  private char peek(int ahead) {
    return at + ahead < text.length() ? text.charAt(at + ahead) : '\0';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isSlash(char c) {
    return c == '/' || c == '\u2044';
  }

  private Refusal unreadable(String why) {
    return new Refusal(
        new Fault(
            FaultCode.UNREADABLE_QUANTITY,
            "",
            text,
            "a number and a unit, for example 2 1/4 cup, 1½ tbsp or 227 g",
            "`" + text + "` is not readable as a quantity: " + why));
  }
}
