package tamis.plugin.intake.word;

import org.jspecify.annotations.Nullable;

/**
 * A number, a word or a sign of a line.
 *
 * @param start where it begins in the line
 * @param end behind its last character
 * @param value of a number
 * @param doubt why a number cannot be told for certain, or null
 */
public record Token(
    Kind kind, String text, int start, int end, double value, @Nullable String doubt) {
  /** What it is. */
  enum Kind {
    NUMBER,
    WORD,
    SIGN
  }

  public boolean isNumber() {
    return kind == Kind.NUMBER;
  }

  boolean isWord() {
    return kind == Kind.WORD;
  }

  boolean is(String sign) {
    return kind == Kind.SIGN && text.equals(sign);
  }

  boolean isDash() {
    return is("-") || is("–") || is("—") || is("−") || is("‐") || is("‑");
  }
}
