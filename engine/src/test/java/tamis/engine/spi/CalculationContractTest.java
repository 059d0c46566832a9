package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Shown;
import tamis.engine.record.Described;

/** The contract finds what it is there to find: each test breaks one promise of a calculation. */
class CalculationContractTest {

  public record In(@Described(value = "A mass", example = "5 g") Mass mass) {}

  public record Out(
      @Described("Twice the mass") double grams,
      @Described("Words") List<String> words,
      @Described("Said or not") @Nullable String note) {}

  public record Mute(@Described("") Mass mass) {}

  public record Deep(@Described("Holds what says nothing") List<Mute> parts) {}

  public record Unreadable(@Described(value = "A mass", example = "5 kilos and a bit") Mass mass) {}

  public record Format(@Described("Taken by an option") @Nullable String format) {}

  public record Units(@Described("Whose measures") @Nullable Shown units) {}

  public record FreeUnits(@Described("Anything") @Nullable String units) {}

  public record NeededUnits(@Described("Whose measures") Shown units) {}

  public record Many(@Described(value = "Masses", most = 1_500) List<Mass> masses) {}

  public record Share(
      @Described(value = "A part", atLeast = "0", atMost = "1") double part,
      @Described("A word") String word) {}

  public record Touchy(@Described(value = "A count", atLeast = "1", atMost = "9") int count) {
    public Touchy {
      if (count > 5) {
        throw new IllegalStateException("more than I thought of");
      }
    }
  }

  public record Short(@Described(value = "Three letters", most = 3) String text) {}

  private static final Cited EGG =
      new Cited("pieces", "egg/each/", "usda-sr28", null, "measured", List.of("/grams"));

  /** A calculation that doubles, unless told to do something else. */
  private record Stand<I extends Record, R extends Record>(
      String name,
      Class<I> input,
      Class<R> result,
      List<I> examples,
      BiFunction<I, Kitchen, Answer<R>> rule,
      Map<String, Function<Answer<R>, String>> renderings)
      implements Calculation<I, R> {
    @Override
    public String title() {
      return "A stand-in";
    }

    @Override
    public Answer<R> calculate(I in, Kitchen kitchen) {
      return rule.apply(in, kitchen);
    }
  }

  private static <R extends Record> Stand<In, R> doubling(
      Class<R> type, BiFunction<In, Kitchen, Answer<R>> rule) {
    return new Stand<>(
        "doubling", In.class, type, List.of(new In(Mass.ofGrams(5))), rule, Map.of());
  }

  private static Answer<Out> twice(In in, Kitchen kitchen) {
    return answer(in.mass().grams() * 2, List.of("twice"), EGG);
  }

  private static Answer<Out> answer(double grams, List<String> words, Cited... sources) {
    return new Answer<>(new Out(grams, words, null), List.of(), List.of(sources));
  }

  private static <I extends Record> Stand<I, Out> taking(Class<I> type, I example) {
    return taking(type, example, in -> answer(1));
  }

  private static <I extends Record> Stand<I, Out> taking(
      Class<I> type, I example, Function<I, Answer<Out>> rule) {
    return new Stand<>(
        "doubling", type, Out.class, List.of(example), (in, kitchen) -> rule.apply(in), Map.of());
  }

  private static Answer<Out> answer(double grams) {
    return answer(grams, List.of(), EGG);
  }

  private static <I extends Record, R extends Record> CalculationContract<I, R> contract(
      Calculation<I, R> calculation) {
    return contract(calculation, true);
  }

  private static <I extends Record, R extends Record> CalculationContract<I, R> contract(
      Calculation<I, R> calculation, boolean namesSources) {
    return new CalculationContract<>() {
      @Override
      protected Calculation<I, R> calculation() {
        return calculation;
      }

      @Override
      protected Plugin plugin() {
        return new Standing(List.of(calculation));
      }

      @Override
      protected boolean namesSources() {
        return namesSources;
      }
    };
  }

  private record Standing(List<Calculation<?, ?>> calculations) implements Plugin {
    @Override
    public String name() {
      return "standing";
    }
  }

  private static void assertFound(Runnable test, String... words) {
    Throwable found = catchThrowable(test::run);
    assertThat(found).as("nothing was found").isNotNull();
    for (String word : words) {
      assertThat(found.toString()).contains(word);
    }
  }

  @Test
  void a_calculation_that_keeps_to_it_passes() {
    CalculationContract<In, Out> contract =
        contract(doubling(Out.class, CalculationContractTest::twice));
    assertThatCode(
            () -> {
              contract.the_name_is_lower_case_words_with_hyphens();
              contract.the_plugin_lists_the_calculation();
              contract.every_component_of_the_input_says_what_it_means();
              contract.every_component_of_the_result_says_what_it_means();
              contract.values_that_stand_as_examples_are_readable();
              contract.the_input_leaves_the_names_of_options_alone();
              contract.there_are_examples_and_each_answers();
              contract.the_largest_inputs_end_in_an_answer_or_a_refusal();
              contract.what_is_wrong_everywhere_is_told_everywhere();
              contract.examples_written_as_plain_values_are_read_back_equal();
              contract.equal_input_gives_an_equal_answer();
              contract.other_calculations_reach_it_by_name_with_plain_values();
              contract.calls_at_the_same_time_give_equal_answers();
              contract.results_hold_a_value_wherever_one_is_promised();
              contract.numbers_of_results_are_finite();
              contract.sources_are_rows_of_tables_and_point_into_the_result();
              contract.remarks_have_a_code_and_a_sentence();
              contract.further_forms_of_the_result_are_text_and_always_the_same();
            })
        .doesNotThrowAnyException();
  }

  @Test
  void a_name_in_another_form_is_found() {
    for (String name : List.of("Doubling", "double it", "double_it", "-double", "double--it", "")) {
      Stand<In, Out> stand =
          new Stand<>(
              name, In.class, Out.class, List.of(), CalculationContractTest::twice, Map.of());
      assertFound(() -> contract(stand).the_name_is_lower_case_words_with_hyphens(), name);
    }
  }

  @Test
  void a_calculation_that_no_plugin_brings_is_found() {
    Calculation<In, Out> lost = doubling(Out.class, CalculationContractTest::twice);
    CalculationContract<In, Out> contract =
        new CalculationContract<>() {
          @Override
          protected Calculation<In, Out> calculation() {
            return lost;
          }

          @Override
          protected Plugin plugin() {
            return new Standing(List.of());
          }
        };
    assertFound(contract::the_plugin_lists_the_calculation, "standing");
    assertFound(contract::the_plugin_is_named_in_its_services_file, "services");
  }

  @Test
  void components_without_a_meaning_are_found_however_deep() {
    Mute mute = new Mute(Mass.zero());
    assertFound(
        () -> contract(taking(Mute.class, mute)).every_component_of_the_input_says_what_it_means(),
        "Mute.mass");
    assertFound(
        () ->
            contract(taking(Deep.class, new Deep(List.of(mute))))
                .every_component_of_the_input_says_what_it_means(),
        "Mute.mass");
    assertFound(
        () ->
            contract(doubling(Deep.class, (in, kitchen) -> Answer.of(new Deep(List.of()))))
                .every_component_of_the_result_says_what_it_means(),
        "Mute.mass");
  }

  @Test
  void an_example_of_a_value_that_cannot_be_read_is_found() {
    assertFound(
        () ->
            contract(taking(Unreadable.class, new Unreadable(Mass.zero())))
                .values_that_stand_as_examples_are_readable(),
        "Unreadable.mass");
  }

  @Test
  void names_of_options_are_found() {
    assertFound(
        () ->
            contract(taking(Format.class, new Format(null)))
                .the_input_leaves_the_names_of_options_alone(),
        "format");
    assertFound(
        () ->
            contract(taking(FreeUnits.class, new FreeUnits(null)))
                .the_input_leaves_the_names_of_options_alone(),
        "us");
    assertFound(
        () ->
            contract(taking(NeededUnits.class, new NeededUnits(Shown.US)))
                .the_input_leaves_the_names_of_options_alone());
    contract(taking(Units.class, new Units(null))).the_input_leaves_the_names_of_options_alone();
  }

  @Test
  void missing_and_refused_examples_are_found() {
    Stand<In, Out> none =
        new Stand<>(
            "none", In.class, Out.class, List.of(), CalculationContractTest::twice, Map.of());
    assertFound(() -> contract(none).there_are_examples_and_each_answers());
    Calculation<In, Out> refusing =
        doubling(
            Out.class,
            (in, kitchen) -> {
              throw Refusal.of(FaultCode.IMPOSSIBLE, "not today");
            });
    assertFound(() -> contract(refusing).there_are_examples_and_each_answers(), "not today");
  }

  @Test
  void an_example_that_a_caller_could_not_write_is_found() {
    assertFound(
        () ->
            contract(taking(Short.class, new Short("four")))
                .examples_written_as_plain_values_are_read_back_equal(),
        "4 characters");
  }

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

  @Test
  void trees_are_what_a_caller_would_write() {
    Map<String, Object> tree = Trees.of(new Out(2.5, List.of("a", "b"), null));
    assertThat(tree).isEqualTo(Map.of("grams", 2.5, "words", List.of("a", "b")));
    assertThat(Trees.leaves(tree))
        .containsOnlyKeys("/grams", "/words/0", "/words/1")
        .containsEntry("/words/1", "b");
    for (String there : List.of("", "/grams", "/words", "/words/1")) {
      assertThat(Trees.has(tree, there)).as(there).isTrue();
    }
    for (String gone : List.of("/note", "/words/2", "/words/01", "/words/-", "/grams/0", "/")) {
      assertThat(Trees.has(tree, gone)).as(gone).isFalse();
    }
    assertThat(Trees.has(Map.of("a/b", Map.of("~", 1)), "/a~1b/~0")).isTrue();
  }
}
