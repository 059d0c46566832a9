package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * How much of labelled lines is read right, field by field; printed, and held to a floor.
 *
 * <p>{@code own-lines} and {@code held-lines} are our own; the latter were labelled before the
 * grammar was written. {@code old-book-lines} are from F. M. Farmer, The Boston Cooking-School Cook
 * Book (1910), chapters 5 and 31; {@code later-book-lines} from its chapters 23 and 32, from I.
 * Beeton, Book of Household Management (1907), P. Muskett, The Art of Living in Australia (1893),
 * E. Acton, Modern Cookery (1845) and I. Copenrath, Regensburger Kochbuch (1902); their last German
 * lines are our own.
 */
class LabelledLinesTest {
  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {"own-lines.csv", "held-lines.csv", "old-book-lines.csv", "later-book-lines.csv"})
  void lines_are_read_as_a_baker_reads_them(String file) {
    LabelledLines labelled = LabelledLines.of(file);
    System.out.println(labelled.report(file));
    assertThat(labelled.silentlyWrong()).as("silently wrong").isEmpty();
    assertThat(labelled.right("quantity")).isGreaterThanOrEqualTo(0.97);
    assertThat(labelled.right("unit")).isGreaterThanOrEqualTo(0.97);
    assertThat(labelled.right("ingredient")).isGreaterThanOrEqualTo(0.93);
  }
}
