package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.trials.Compared.CHECK;
import static tamis.plugin.trials.Compared.compared;
import static tamis.plugin.trials.Compared.difference;
import static tamis.plugin.trials.Compared.of;
import static tamis.plugin.trials.Compared.six;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** The windows that readings are held against: of the place, of the revision. */
class TrialWindowsTest {
  @Test
  void the_window_is_that_of_the_place() {
    Answer<TrialComparison.Result> high =
        compared(six().kitchen(CHECK), Map.of("trials", List.of("t1", "t7"), "altitude", "1500 m"));
    Difference syrup = difference(high.result(), "syrup", "temperature");
    assertThat(syrup.window().low()).as("116 less 1500/300").isEqualTo(111);
    assertThat(syrup.window().writtenLow()).isEqualTo(116);
    assertThat(syrup.window().corrected()).isTrue();
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(2.0, 0.0);
    assertThat(high.remarks()).extracting(Remark::code).contains("hot");
  }

  @Test
  void without_that_calculation_windows_are_as_written_and_a_remark_says_so() {
    Answer<TrialComparison.Result> answer =
        compared(six().kitchen(), Map.of("trials", List.of("t1", "t7"), "altitude", "1500 m"));
    Difference syrup = difference(answer.result(), "syrup", "temperature");
    assertThat(syrup.window().low()).isEqualTo(116);
    assertThat(syrup.window().corrected()).isFalse();
    assertThat(answer.remarks()).extracting(Remark::code).contains("window-as-written");
  }

  @Test
  void each_revision_is_held_against_its_own_window_and_is_a_difference() {
    TrialComparison.Result result = of(six(), "t7", "t8").result();
    Difference syrup = difference(result, "syrup", "temperature");
    assertThat(syrup.window().low()).as("of the newest revision").isEqualTo(115);
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(-5.0, 0.0);
    Difference revision = difference(result, "null", "revision");
    assertThat(revision.values()).extracting(TrialValue::value).containsExactly(1.0, 2.0);
  }

  @Test
  void a_reading_that_cannot_be_read_is_told_and_counts_as_not_read() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19")
            .trial(
                "b",
                "cream@1",
                "discarded",
                "",
                "observations",
                List.of(
                    Book.map(
                        "id",
                        "1",
                        "stage",
                        "temper",
                        "at",
                        "2026-04-11T09:00",
                        "measure",
                        "temperature",
                        "value",
                        "warm")));
    Answer<TrialComparison.Result> answer = compared(book);
    assertThat(answer.remarks()).extracting(Remark::code).contains("reading-not-readable");
    assertThat(answer.result().unread()).extracting(Unread::stage).contains("temper");
  }

  @Test
  void equal_readings_of_which_one_is_out_of_its_own_window_are_a_difference() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "discarded", "syrup 115.5")
            .trial("b", "cream@2", "kept", "syrup 115.5");
    Difference syrup = difference(of(book, "a", "b").result(), "syrup", "temperature");
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(-0.5, 0.0);
  }
}
