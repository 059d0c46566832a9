package tamis.engine.quantity;

import java.util.Locale;

/** A place in a text that is read from left to right. */
final class Cursor {
  /** Between the space and this are plain letters, figures and signs only. */
  private static final char DELETE = '\u007f';

  private final String text;
  private int at;

  /**
   * @param text with single plain spaces, as {@link #spaced} makes it
   */
  Cursor(String text) {
    this.text = text;
  }

  /**
   * A text without space at its ends and with one plain space wherever it has space of any kind.
   */
  static String spaced(String text) {
    return isSpaced(text) ? text : made(text);
  }

  /** As most texts are: with single plain spaces between letters already. */
  private static boolean isSpaced(String text) {
    char before = ' ';
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ' ' ? before == ' ' : isOtherSpace(c)) {
        return false;
      }
      before = c;
    }
    return before != ' ';
  }

  private static boolean isOtherSpace(char c) {
    boolean sign = c > ' ' && c < DELETE;
    return !sign && (Character.isWhitespace(c) || Character.isSpaceChar(c));
  }

  private static String made(String text) {
    StringBuilder spaced = new StringBuilder(text.length());
    boolean space = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ' ' || isOtherSpace(c)) {
        space = !spaced.isEmpty();
      } else {
        spaced.append(space ? " " : "").append(c);
        space = false;
      }
    }
    return spaced.toString();
  }

  String text() {
    return text;
  }

  /** The place, to come {@link #back} to. */
  int mark() {
    return at;
  }

  void back(int mark) {
    at = mark;
  }

  /** The character so far ahead, or NUL behind the end. */
  char peek(int ahead) {
    return at + ahead < text.length() ? text.charAt(at + ahead) : '\0';
  }

  void skip(int characters) {
    at += characters;
  }

  void skipSpace() {
    if (peek(0) == ' ') {
      at++;
    }
  }

  /** Goes past {@code word}, in either case, if it stands here. */
  boolean skipWord(String word) {
    boolean here = text.regionMatches(true, at, word, 0, word.length());
    if (here) {
      at += word.length();
    }
    return here;
  }

  void skipDigits() {
    while (isDigit(peek(0))) {
      at++;
    }
  }

  /** The next word in lower case, past a space or a hyphen: "one-half" is two words. */
  String word() {
    skipSpace();
    if (peek(0) == '-' && Character.isLetter(peek(1))) {
      at++;
    }
    int start = at;
    while (Character.isLetter(peek(0))) {
      at++;
    }
    return since(start).toLowerCase(Locale.ROOT);
  }

  String since(int mark) {
    return text.substring(mark, at);
  }

  /** What follows, without the space or the hyphen that ties it to a number: "9-inch". */
  String rest() {
    skipSpace();
    if (peek(0) == '-' && Character.isLetter(peek(1))) {
      at++;
    }
    return text.substring(at);
  }

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
