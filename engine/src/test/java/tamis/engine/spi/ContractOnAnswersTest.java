package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowable;
import static tamis.engine.spi.CalculationContractTest.EGG;
import static tamis.engine.spi.CalculationContractTest.In;
import static tamis.engine.spi.CalculationContractTest.Many;
import static tamis.engine.spi.CalculationContractTest.Out;
import static tamis.engine.spi.CalculationContractTest.Share;
import static tamis.engine.spi.CalculationContractTest.Stand;
import static tamis.engine.spi.CalculationContractTest.Touchy;
import static tamis.engine.spi.CalculationContractTest.answer;
import static tamis.engine.spi.CalculationContractTest.assertFound;
import static tamis.engine.spi.CalculationContractTest.contract;
import static tamis.engine.spi.CalculationContractTest.doubling;
import static tamis.engine.spi.CalculationContractTest.taking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;

/** The contract finds what it is there to find in answers. */
class ContractOnAnswersTest {
  @Test
  void an_answer_that_changes_from_call_to_call_is_found() {
    AtomicInteger calls = new AtomicInteger();
    Calculation<In, Out> counting =
        doubling(Out.class, (in, kitchen) -> answer(calls.incrementAndGet(), List.of(), EGG));
    assertFound(() -> contract(counting).equal_input_gives_an_equal_answer());
    assertFound(() -> contract(counting).other_calculations_reach_it_by_name_with_plain_values());
    assertFound(
        () -> {
          try {
            contract(counting).calls_at_the_same_time_give_equal_answers();
          } catch (Exception failed) {
            throw new AssertionError(failed);
          }
        });
  }

  @Test
  void a_failure_beside_other_calls_is_found() {
    List<Integer> shared = new ArrayList<>();
    Calculation<In, Out> failing =
        doubling(
            Out.class,
            (in, kitchen) -> {
              synchronized (shared) {
                shared.add(1);
                if (shared.size() == 20) {
                  throw new IllegalStateException("the twentieth call");
                }
              }
              return answer(1, List.of(), EGG);
            });
    Throwable found =
        catchThrowable(() -> contract(failing).calls_at_the_same_time_give_equal_answers());
    assertThat(found).isInstanceOf(AssertionError.class).hasMessageContaining("twentieth");
  }

  @Test
  void failures_at_the_edges_of_what_is_allowed_are_found() {
    Stand<Many, Out> fewOnly =
        taking(
            Many.class,
            new Many(List.of(Mass.ofGrams(1))),
            in -> answer(new double[1_000].length / (in.masses().size() < 1_000 ? 1 : 0)));
    assertFound(
        contract(fewOnly)::the_largest_inputs_end_in_an_answer_or_a_refusal,
        "/masses with 1500 entries",
        "ArithmeticException");
    Stand<Share, Out> inverse =
        taking(Share.class, new Share(0.5, "half"), in -> answer(1 / in.part()));
    assertFound(
        contract(inverse)::the_largest_inputs_end_in_an_answer_or_a_refusal,
        "/part = 0",
        "result/grams is no number");
    assertThatCode(contract(inverse)::what_is_wrong_everywhere_is_told_everywhere)
        .doesNotThrowAnyException();
    assertFound(
        contract(taking(Touchy.class, new Touchy(2)))
            ::the_largest_inputs_end_in_an_answer_or_a_refusal,
        "more than I thought of");
  }

  @Test
  void nulls_and_numbers_that_are_none_are_found_with_their_place() {
    Calculation<In, Out> nulls =
        doubling(Out.class, (in, kitchen) -> answer(1, Arrays.asList("a", null), EGG));
    assertFound(
        () -> contract(nulls).results_hold_a_value_wherever_one_is_promised(), "result/words/1");
    Calculation<In, Out> missing = doubling(Out.class, (in, kitchen) -> answer(1, null, EGG));
    assertFound(
        () -> contract(missing).results_hold_a_value_wherever_one_is_promised(), "result/words");
    for (double none : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      Calculation<In, Out> wild =
          doubling(Out.class, (in, kitchen) -> answer(none, List.of(), EGG));
      assertFound(() -> contract(wild).numbers_of_results_are_finite(), "result/grams");
    }
  }

  @Test
  void sources_that_are_missing_unknown_or_lead_nowhere_are_found() {
    Calculation<In, Out> none = doubling(Out.class, (in, kitchen) -> answer(1, List.of()));
    assertFound(() -> contract(none).sources_are_rows_of_tables_and_point_into_the_result());
    contract(none, false).sources_are_rows_of_tables_and_point_into_the_result();
    Calculation<In, Out> named = doubling(Out.class, CalculationContractTest::twice);
    assertFound(
        () -> contract(named, false).sources_are_rows_of_tables_and_point_into_the_result(),
        "need");
    for (Cited wrong :
        List.of(
            new Cited("pieces", "egg/no/", "usda-sr28", null, "measured", List.of("/grams")),
            new Cited("no-table", "egg", "usda-sr28", null, "measured", List.of("/grams")),
            new Cited("pieces", "egg/each/", "", null, "measured", List.of("/grams")),
            new Cited("pieces", "egg/each/", "usda-sr28", null, "measured", List.of("/gram")),
            new Cited("pieces", "egg/each/", "x", null, "measured", List.of("/words/0")))) {
      Calculation<In, Out> citing =
          doubling(Out.class, (in, kitchen) -> answer(1, List.of(), wrong));
      assertFound(() -> contract(citing).sources_are_rows_of_tables_and_point_into_the_result());
    }
  }

  @Test
  void remarks_without_code_sentence_or_place_are_found() {
    for (String[] wrong :
        new String[][] {{"Bad Code", "words", ""}, {"code", " ", ""}, {"code", "words", "mass"}}) {
      Calculation<In, Out> remarking =
          doubling(
              Out.class,
              (in, kitchen) -> {
                Notes notes = new Notes();
                notes.remark(wrong[0], wrong[2], wrong[1]);
                return Answer.of(new Out(1, List.of(), null), notes);
              });
      assertFound(() -> contract(remarking).remarks_have_a_code_and_a_sentence());
    }
  }

  @Test
  void renderings_that_are_empty_change_or_have_no_media_type_are_found() {
    AtomicInteger calls = new AtomicInteger();
    for (Map<String, Function<Answer<Out>, String>> wrong :
        List.<Map<String, Function<Answer<Out>, String>>>of(
            Map.of("image/svg+xml", answer -> ""),
            Map.of("text/calendar", answer -> "" + calls.incrementAndGet()),
            Map.of("svg", answer -> "picture"))) {
      Stand<In, Out> stand =
          new Stand<>(
              "doubling",
              In.class,
              Out.class,
              List.of(new In(Mass.ofGrams(5))),
              CalculationContractTest::twice,
              wrong);
      assertFound(() -> contract(stand).further_forms_of_the_result_are_text_and_always_the_same());
    }
  }
}
