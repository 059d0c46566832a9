package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Cited;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Shown;
import tamis.engine.record.Described;

/**
 * The contract finds what it is there to find in what a calculation says of itself: each test
 * breaks one promise.
 */
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

  static final Cited EGG =
      new Cited("pieces", "egg/each/", "usda-sr28", null, "measured", List.of("/grams"));

  /** A calculation that doubles, unless told to do something else. */
  record Stand<I extends Record, R extends Record>(
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

  static <R extends Record> Stand<In, R> doubling(
      Class<R> type, BiFunction<In, Kitchen, Answer<R>> rule) {
    return new Stand<>(
        "doubling", In.class, type, List.of(new In(Mass.ofGrams(5))), rule, Map.of());
  }

  static Answer<Out> twice(In in, Kitchen kitchen) {
    return answer(in.mass().grams() * 2, List.of("twice"), EGG);
  }

  static Answer<Out> answer(double grams, List<String> words, Cited... sources) {
    return new Answer<>(new Out(grams, words, null), List.of(), List.of(sources));
  }

  static <I extends Record> Stand<I, Out> taking(Class<I> type, I example) {
    return taking(type, example, in -> answer(1));
  }

  static <I extends Record> Stand<I, Out> taking(
      Class<I> type, I example, Function<I, Answer<Out>> rule) {
    return new Stand<>(
        "doubling", type, Out.class, List.of(example), (in, kitchen) -> rule.apply(in), Map.of());
  }

  static Answer<Out> answer(double grams) {
    return answer(grams, List.of(), EGG);
  }

  static <I extends Record, R extends Record> CalculationContract<I, R> contract(
      Calculation<I, R> calculation) {
    return contract(calculation, true);
  }

  static <I extends Record, R extends Record> CalculationContract<I, R> contract(
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

  record Standing(List<Calculation<?, ?>> calculations) implements Plugin {
    @Override
    public String name() {
      return "standing";
    }
  }

  static void assertFound(Runnable test, String... words) {
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
}
