package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.trials.Compared.CHECK;
import static tamis.plugin.trials.Compared.compared;
import static tamis.plugin.trials.Compared.faults;
import static tamis.plugin.trials.Compared.of;
import static tamis.plugin.trials.Compared.six;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Remark;

/** Which trials and places cannot be compared, and how trials are named. */
class TrialComparisonRefusalsTest {
  @Test
  void all_trials_of_a_formula_are_compared_by_its_name() {
    TrialComparison.Result result =
        compared(six().kitchen(CHECK), Map.of("formula", "cream")).result();
    assertThat(result.trials()).hasSize(8);
    assertThat(faults(() -> compared(Book.ofCream().kitchen(), Map.of("formula", "cream"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.MISSING, "/formula"));
  }

  @Test
  void unknown_trials_are_all_told() {
    assertThat(faults(() -> of(six(), "t1", "t77", "t78")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.UNKNOWN_TRIAL, "/trials/1"),
            tuple(FaultCode.UNKNOWN_TRIAL, "/trials/2"));
  }

  @Test
  void trials_of_two_formulas_are_refused() {
    Book book = six();
    book.with(
        "paste@1",
        Map.of("id", "paste", "lines", List.of(Map.of("ingredient", "almond", "quantity", "1 g"))));
    book.trial("p1", "paste@1", "kept", "");
    assertThat(faults(() -> of(book, "t1", "p1", "t2")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/trials/1"));
  }

  @Test
  void one_trial_twice_the_same_and_none_are_refused() {
    assertThat(faults(() -> of(six(), "t1"))).extracting(Fault::pointer).containsExactly("/trials");
    assertThat(faults(() -> of(six(), "t1", "t1")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/trials/1"));
    assertThat(faults(() -> compared(six().kitchen(), Map.of())))
        .extracting(Fault::code)
        .containsExactly(FaultCode.EXACTLY_ONE);
    assertThat(faults(() -> compared(six().kitchen(), Map.of("formula", "cream@1"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/formula"));
  }

  @Test
  void a_place_that_cannot_be_is_a_fault_at_its_own_name() {
    assertThat(
            faults(
                () ->
                    compared(
                        six().kitchen(CHECK),
                        Map.of(
                            "trials",
                            List.of("t1", "t2"),
                            "altitude",
                            "100 m",
                            "pressure",
                            "900 hPa"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/pressure"));
    assertThat(
            faults(
                () ->
                    compared(
                        six().kitchen(CHECK),
                        Map.of("trials", List.of("t1", "t2"), "altitude", "9000 m"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.OUT_OF_BOUNDS, "/altitude"));
  }

  @Test
  void a_revision_that_is_not_there_is_a_fault_of_its_trial() {
    Book book = six().trial("t9", "cream@7", "kept", "");
    assertThat(faults(() -> of(book, "t1", "t9")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.UNKNOWN_FORMULA, "/trials/1"));
  }

  @Test
  void a_trial_without_a_revision_is_taken_at_the_newest_and_says_so() {
    Book book = six().trial("t9", "cream", "kept", "temper 19");
    assertThat(of(book, "t1", "t9").remarks())
        .extracting(Remark::code)
        .contains("revision-not-pinned");
  }
}
