package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How much of labelled lines is read right, field by field; printed, and held to a floor. */
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
