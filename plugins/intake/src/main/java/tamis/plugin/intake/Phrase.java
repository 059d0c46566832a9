package tamis.plugin.intake;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;

/**
 * A line as its tokens.
 *
 * @param text as written
 */
record Phrase(String text, List<Token> tokens) {

  static Phrase of(String text, Tongue tongue) {
    return new Phrase(text, Tokenizer.of(text, tongue.decimalComma()));
  }

  int size() {
    return tokens.size();
  }

  Token get(int index) {
    return tokens.get(index);
  }

  boolean has(int index) {
    return index >= 0 && index < tokens.size();
  }

  boolean is(int index, String sign) {
    return has(index) && tokens.get(index).is(sign);
  }

  boolean isDash(int index) {
    return has(index) && tokens.get(index).isDash();
  }

  boolean isNumber(int index) {
    return has(index) && tokens.get(index).isNumber();
  }

  boolean isWord(int index) {
    return has(index) && tokens.get(index).isWord();
  }

  /** Whether no space stands before the token. */
  boolean touches(int index) {
    return index > 0 && has(index) && tokens.get(index - 1).end() == tokens.get(index).start();
  }

  /** The source from one token up to another. */
  String text(int from, int to) {
    return from >= to ? "" : text.substring(tokens.get(from).start(), tokens.get(to - 1).end());
  }

  /** The same in the form in which words are compared. */
  String folded(int from, int to) {
    return folded(text(from, to));
  }

  /** Lower case, plain apostrophes and single plain spaces. */
  static String folded(String text) {
    StringBuilder folded = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!Tokenizer.isSpace(c)) {
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
  static String withoutAccents(String text) {
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
  int behindParenthesis(int from) {
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
}
