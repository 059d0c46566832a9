package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CursorTest {
  /** Spaces that a keyboard, a typesetter or a table puts there, and signs that are none. */
  private static final String SIGNS = "ab1½°  \t\n\u00a0\u2009\u3000\u0085\u007f\u0001";

  /** The definition, by a pattern of the JDK. */
  private static String byPattern(String text) {
    String plain = text.replaceAll("[\\p{Z}\\p{javaWhitespace}]+", " ");
    return plain.replaceAll("\\A | \\z", "");
  }

  @Test
  void whatever_stands_between_words_becomes_one_plain_space() {
    SplittableRandom random = new SplittableRandom(6);
    for (int i = 0; i < 50_000; i++) {
      StringBuilder text = new StringBuilder();
      for (int length = random.nextInt(8); length > 0; length--) {
        text.append(SIGNS.charAt(random.nextInt(SIGNS.length())));
      }
      assertThat(Cursor.spaced(text.toString())).isEqualTo(byPattern(text.toString()));
    }
  }
}
