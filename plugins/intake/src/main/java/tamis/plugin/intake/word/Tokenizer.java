package tamis.plugin.intake.word;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.VulgarFractions;

/** Cuts a line into numbers, words and signs, from left to right, each character once. */
final class Tokenizer {
  /** Stress and footnotes: they say nothing of the ingredient. */
  static final String MARKS = "*_†‡¹²³";

  private static final int MOST_DIGITS = 9;
  private static final int GROUP = 3;

  private final String line;
  private final boolean decimalComma;
  private final List<Token> tokens = new ArrayList<>();
  private int at;
  private @Nullable String doubt;

  private Tokenizer(String line, boolean decimalComma) {
    this.line = line;
    this.decimalComma = decimalComma;
  }

  /**
   * @param decimalComma whether the language writes a decimal comma
   */
  static List<Token> of(String line, boolean decimalComma) {
    Tokenizer tokenizer = new Tokenizer(line, decimalComma);
    while (tokenizer.at < line.length()) {
      tokenizer.next();
    }
    return List.copyOf(tokenizer.tokens);
  }

  private void next() {
    char c = line.charAt(at);
    if (SmallFigures.at(line, at) != null) {
      number();
    } else if (Phrase.isSpace(c) || MARKS.indexOf(c) >= 0) {
      at++;
    } else if (isDigit(c) || VulgarFractions.is(c) || (c == '.' && isDigit(peek(1)))) {
      number();
    } else if (Character.isLetter(c)) {
      word();
    } else {
      int length = Character.charCount(line.codePointAt(at));
      add(Token.Kind.SIGN, at, at + length, 0);
      at += length;
    }
  }

  private void word() {
    int start = at;
    while (at < line.length() && isWordPart(at, start)) {
      char c = line.charAt(at++);
      if (decimalComma && (c == '\'' || c == '’')) {
        break; // d'amandes, dell'olio: what is left out belongs to the word before
      }
    }
    add(Token.Kind.WORD, start, at, 0);
  }

  private boolean isWordPart(int index, int start) {
    char c = line.charAt(index);
    if (Character.isLetter(c) || Character.getType(c) == Character.NON_SPACING_MARK) {
      return true;
    }
    boolean apostrophe = c == '\'' || c == '’';
    return apostrophe && index > start;
  }

  private void number() {
    int start = at;
    doubt = null;
    double value;
    @Nullable SmallFigures small = SmallFigures.at(line, at);
    if (small != null) {
      value = small.value();
      at = small.end();
    } else if (VulgarFractions.is(peek(0))) {
      value = VulgarFractions.value(line.charAt(at++));
    } else {
      value = decimal();
      if (isSlash(peek(0)) && isDigit(peek(1))) {
        at++;
        value = over(value, decimal());
      } else if (value == Math.rint(value)) {
        value += fractionBehind();
      }
    }
    add(Token.Kind.NUMBER, start, at, value);
    doubt = null;
  }

  /** The fraction of a mixed number: 1½, 1 1/2, 1-1/2; else 0. */
  private double fractionBehind() {
    int ahead = 0;
    if (Phrase.isSpace(peek(0)) || peek(0) == '-' || peek(0) == '‑') {
      ahead = 1;
    }
    char next = peek(ahead);
    @Nullable SmallFigures small = SmallFigures.at(line, at + ahead);
    if (small != null && small.value() < 1) {
      at = small.end();
      return small.value();
    }
    if (VulgarFractions.is(next)) {
      at += ahead + 1;
      return VulgarFractions.value(next);
    }
    int digits = ahead;
    while (isDigit(peek(digits)) && digits - ahead < 2) {
      digits++;
    }
    if (digits == ahead || !isSlash(peek(digits)) || !isDigit(peek(digits + 1)) || ahead == 0) {
      return 0;
    }
    double above = Integer.parseInt(line.substring(at + ahead, at + digits));
    int back = at;
    at += digits + 1;
    double below = decimal();
    if (above < below) {
      return above / below;
    }
    at = back;
    return 0;
  }

  private double over(double above, double below) {
    if (below == 0) {
      doubt = "a fraction over zero";
      return 0;
    }
    double last = above % 10; // "11/2 cups" are one and a half in many a scan
    if (above > 10 && below < 10 && last >= 1 && last < below) {
      doubt = "a space may be missing within the fraction";
    }
    return above / below;
  }

  private double decimal() {
    int start = at;
    skipDigits();
    skipGroups(at - start);
    int whole = at - start;
    char mark = peek(0);
    if ((mark == '.' || mark == ',') && isDigit(peek(1))) {
      int behind = 1;
      while (isDigit(peek(behind))) {
        behind++;
      }
      mark(mark, whole, behind - 1);
      at += behind;
    }
    String figures = line.substring(start, at).replaceAll("[\\s\u00a0\u2009\u202f]", "");
    if (figures.length() > MOST_DIGITS) {
      doubt = "a number of " + figures.length() + " characters";
      return 0;
    }
    boolean grouped = isGrouping(mark) && at - start == whole + 1 + GROUP;
    String plain = grouped ? figures.replace("" + mark, "") : figures.replace(',', '.');
    return Double.parseDouble(plain.startsWith(".") ? "0" + plain : plain);
  }

  /** A comma may be a decimal mark or group thousands, and a point too: told where it is unsure. */
  private void mark(char mark, int whole, int behind) {
    boolean thousands = behind == GROUP && whole > 0 && whole <= GROUP;
    boolean foreign = (mark == ',') != decimalComma;
    if (thousands && foreign && line.charAt(at - whole) != '0') {
      doubt = "whether `" + mark + "` is a decimal mark or groups thousands";
    }
  }

  private boolean isGrouping(char mark) {
    return (mark == ',') != decimalComma && (mark == ',' || mark == '.') && doubt != null;
  }

  /** "1 080 g": a space groups thousands where nothing else can be meant by it. */
  private void skipGroups(int digits) {
    boolean few = digits > 0 && digits <= GROUP;
    while (few && Phrase.isSpace(peek(0)) && isGroup()) {
      at += 1 + GROUP;
    }
  }

  private boolean isGroup() {
    boolean hard = peek(0) != ' ' || peek(1) == '0'; // "1 400 g can" is one can
    for (int i = 1; i <= GROUP; i++) {
      hard &= isDigit(peek(i));
    }
    return hard && !isDigit(peek(GROUP + 1));
  }

  private void skipDigits() {
    while (isDigit(peek(0))) {
      at++;
    }
  }

  private char peek(int ahead) {
    return at + ahead < line.length() ? line.charAt(at + ahead) : '\0';
  }

  private void add(Token.Kind kind, int start, int end, double value) {
    tokens.add(new Token(kind, line.substring(start, end), start, end, value, doubt));
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isSlash(char c) {
    return c == '/' || c == '\u2044';
  }
}
