package tamis.plugin.intake.word;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;

/**
 * A line as its tokens.
 *
 * @param text as written
 */
public record Phrase(String text, List<Token> tokens) {

  public static Phrase of(String text, Tongue tongue) {
    return new Phrase(text, Tokenizer.of(text, tongue.decimalComma()));
  }

  public int size() {
    return tokens.size();
  }

  public Token get(int index) {
    return tokens.get(index);
  }

  public boolean has(int index) {
    return index >= 0 && index < tokens.size();
  }

  public boolean is(int index, String sign) {
    return has(index) && tokens.get(index).is(sign);
  }

  public boolean isDash(int index) {
    return has(index) && tokens.get(index).isDash();
  }

  public boolean isNumber(int index) {
    return has(index) && tokens.get(index).isNumber();
  }

  public boolean isWord(int index) {
    return has(index) && tokens.get(index).isWord();
  }

  /** Whether a number is one side of a ratio: {@code 1:6}. */
  public boolean isRatio(int index) {
    return isRatioSign(index + 1) || isRatioSign(index - 1);
  }

  private boolean isRatioSign(int index) {
    boolean between = isNumber(index - 1) && is(index, ":") && isNumber(index + 1);
    return between && touches(index) && touches(index + 1);
  }

  /** Whether "x" or its sign stands at a place, as in 3 x 400 g. */
  public boolean isTimes(int index) {
    return is(index, "×") || (isWord(index) && folded(index, index + 1).equals("x"));
  }

  /** Whether no space stands before the token. */
  public boolean touches(int index) {
    return index > 0 && has(index) && tokens.get(index - 1).end() == tokens.get(index).start();
  }

  /** The source from one token up to another. */
  public String text(int from, int to) {
    return from >= to ? "" : text.substring(tokens.get(from).start(), tokens.get(to - 1).end());
  }

  /** The same in the form in which words are compared. */
  public String folded(int from, int to) {
    return folded(text(from, to));
  }

  /** Lower case, plain apostrophes and single plain spaces. */
  public static String folded(String text) {
    StringBuilder folded = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Tokenizer.MARKS.indexOf(c) >= 0) {
        continue; // stress and footnotes
      }
      if (!Phrase.isSpace(c)) {
        folded.append(c == '’' ? '\'' : c);
      } else if (!folded.isEmpty() && folded.charAt(folded.length() - 1) != ' ') {
        folded.append(' ');
      }
    }
    String lower = folded.toString().strip().toLowerCase(Locale.ROOT);
    return Normalizer.isNormalized(lower, Normalizer.Form.NFC)
        ? lower
        : Normalizer.normalize(lower, Normalizer.Form.NFC);
  }

  /** Many a keyboard has no accents. */
  public static String withoutAccents(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    String apart = Normalizer.normalize(text, Normalizer.Form.NFD);
    for (int i = 0; i < apart.length(); i++) {
      if (Character.getType(apart.charAt(i)) != Character.NON_SPACING_MARK) {
        plain.append(apart.charAt(i));
      }
    }
    return plain.toString();
  }

  /** The place behind a parenthesis that opens at {@code from}; -1 if it is not closed. */
  public int behindParenthesis(int from) {
    int depth = 0;
    for (int i = from; i < tokens.size(); i++) {
      if (is(i, "(") || is(i, "[")) {
        depth++;
      } else if ((is(i, ")") || is(i, "]")) && --depth == 0) {
        return i + 1;
      }
    }
    return -1;
  }

  /** Whether a character is space of any kind. */
  public static boolean isSpace(char c) {
    return Character.isWhitespace(c) || Character.isSpaceChar(c);
  }
}
