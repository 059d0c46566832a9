package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.fail;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.record.Component;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.record.Shape;

/**
 * What every calculation must keep to, ours and anybody's. A calculation's test extends this, says
 * which calculation and which plugin it is, and adds its own worked examples.
 *
 * @param <I> the input
 * @param <R> the result
 */
public abstract class CalculationContract<I extends Record, R extends Record> {
  private static final String NAME = "[a-z][a-z0-9]*(-[a-z0-9]+)*";

  /** Names that say how to answer; an input that used one could not be asked for in a query. */
  private static final Set<String> RESERVED =
      Set.of("format", "pick", "decimal", "errors", "bom", "partial", "sources", "k", "key");

  /** May be an input's name, but then says whose measures are displayed. */
  private static final String UNITS = "units";

  /** Guards against an endless calculation; it says nothing about speed. */
  private static final Duration HANGS = Duration.ofSeconds(30);

  private static final int CALLS = 64;
  private static final int THREADS = 8;

  /** The calculation that is tested. */
  protected abstract Calculation<I, R> calculation();

  /** The plugin that brings it. */
  protected abstract Plugin plugin();

  /** The kitchen that the examples are run in; unless overridden, with nothing on its shelf. */
  protected Kitchen kitchen() {
    return new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(plugin())));
  }

  /** A kitchen with these formulas stored, to override {@link #kitchen()} with. */
  protected final Kitchen kitchenWith(Formula... stored) {
    return new Pantry(Shelf.of(List.of(stored), List.of()), Pantry.Fittings.of(List.of(plugin())));
  }

  /** A table that cannot be read would else be told as a class that is not found, in each test. */
  @BeforeEach
  public final void its_classes_and_tables_can_be_loaded() {
    try {
      calculation();
      assertThat(plugin().tables()).doesNotContainNull();
    } catch (LinkageError broken) {
      Throwable cause = broken;
      while (cause.getCause() != null) {
        cause = cause.getCause();
      }
      fail("it cannot be loaded: " + cause.getMessage(), broken);
    }
  }

  /** False for a calculation that rests on no table: then no answer may name a source. */
  protected boolean namesSources() {
    return true;
  }

  /** The answer in {@link #kitchen()}. */
  protected final Answer<R> answer(I input) {
    return calculation().calculate(input, kitchen());
  }

  /** The result of an input written as plain values, read as the host reads it. */
  protected final R result(Map<String, ?> input) {
    return answer(read(input)).result();
  }

  /** The input as the host reads it. */
  protected final I read(Map<String, ?> input) {
    return new RecordReader(kitchen(), Limits.usual()).read(calculation().input(), input);
  }

  @Test
  public final void the_name_is_lower_case_words_with_hyphens() {
    assertThat(calculation().name()).matches(NAME).hasSizeLessThanOrEqualTo(60);
    assertThat(calculation().name()).as("always the same").isEqualTo(calculation().name());
    assertThat(calculation().title()).isNotBlank().doesNotContain("\n");
  }

  @Test
  public final void the_plugin_lists_the_calculation() {
    assertThat(plugin().name()).matches(NAME);
    assertThat(plugin().calculations())
        .filteredOn(listed -> listed.getClass() == calculation().getClass())
        .as("calculations of plugin %s of class %s", plugin().name(), calculation().getClass())
        .hasSize(1);
    assertThat(plugin().calculations())
        .extracting(Calculation::name)
        .doesNotHaveDuplicates()
        .contains(calculation().name());
  }

  @Test
  public final void the_plugin_is_named_in_its_services_file() {
    assertThat(ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::type))
        .as("META-INF/services/tamis.engine.spi.Plugin")
        .contains(plugin().getClass());
  }

  @Test
  public final void every_component_of_the_input_says_what_it_means() {
    assertMeanings(calculation().input());
  }

  @Test
  public final void every_component_of_the_result_says_what_it_means() {
    assertMeanings(calculation().result());
  }

  private static void assertMeanings(Class<? extends Record> type) {
    Components.within(type)
        .forEach(
            (name, component) ->
                assertThat(component.described().value())
                    .as("meaning of %s", name)
                    .isNotBlank()
                    .doesNotContain("\n"));
  }

  @Test
  public final void values_that_stand_as_examples_are_readable() {
    for (Class<?> type : Components.records(calculation().input())) {
      Class<? extends Record> record = type.asSubclass(Record.class);
      for (Component component : Shape.of(record).components().values()) {
        String example = component.described().example();
        if (!example.isEmpty()) {
          assertReadable(record, component.name(), example);
        }
      }
    }
  }

  private static void assertReadable(Class<? extends Record> type, String name, String example) {
    RecordReader reader =
        new RecordReader(References.UNCHECKED, Limits.usual(), true /* numbers as text */, false);
    try {
      reader.read(type, Map.of(name, example));
    } catch (Refusal others) {
      assertThat(others.faults())
          .as("faults of the example of %s.%s", type.getName(), name)
          .noneMatch(fault -> fault.pointer().startsWith("/" + name));
    }
  }

  @Test
  public final void the_input_leaves_the_names_of_options_alone() {
    Map<String, Component> components = Shape.of(calculation().input()).components();
    assertThat(components.keySet()).doesNotContainAnyElementsOf(RESERVED);
    if (components.containsKey(UNITS)) {
      assertThat(Components.within(calculation().input()))
          .as("what `units` may be: whose measures are displayed, left out by most")
          .hasEntrySatisfying(
              calculation().input().getName() + "." + UNITS,
              units ->
                  assertThat(tamis.engine.record.Form.allowed(units.form()))
                      .containsExactlyInAnyOrder("us", "metric"));
      assertThat(components.get(UNITS).required()).isFalse();
    }
  }

  @Test
  public final void there_are_examples_and_each_answers() {
    assertThat(calculation().examples()).isNotEmpty().doesNotContainNull();
    for (I example : calculation().examples()) {
      Answer<R> answer = assertTimeoutPreemptively(HANGS, () -> answer(example));
      assertThat(answer).isNotNull();
      assertThat(answer.result()).isInstanceOf(calculation().result());
    }
  }

  @Test
  public final void the_largest_inputs_end_in_an_answer_or_a_refusal() {
    for (I example : calculation().examples()) {
      Extremes.of(calculation().input(), Trees.of(example))
          .forEach(
              (extreme, input) ->
                  assertTimeoutPreemptively(HANGS, () -> ends(extreme, input), extreme));
    }
  }

  private void ends(String extreme, Map<String, Object> input) {
    try {
      Trees.leaves(Trees.of(answer(read(input)).result()))
          .forEach(
              (pointer, value) ->
                  assertThat(value instanceof Double number && !Double.isFinite(number))
                      .as("with %s result%s is no number: %s", extreme, pointer, value)
                      .isFalse());
    } catch (Refusal refused) {
      assertThat(refused.faults()).isNotEmpty();
    } catch (RuntimeException | StackOverflowError failed) {
      fail("it fails with " + extreme + ": " + failed, failed);
    }
  }

  @Test
  public final void what_is_wrong_everywhere_is_told_everywhere() {
    for (I example : calculation().examples()) {
      Map<String, Object> wrong = Extremes.allWrong(calculation().input(), Trees.of(example));
      Throwable refused = catchThrowable(() -> read(wrong));
      assertThat(refused).as("an input that is wrong everywhere").isInstanceOf(Refusal.class);
      for (String name : wrong.keySet()) {
        assertThat(((Refusal) refused).faults())
            .as("faults that lead to `%s`", name)
            .anyMatch(fault -> (fault.pointer() + "/").startsWith("/" + name + "/"));
      }
    }
  }

  @Test
  public final void examples_written_as_plain_values_are_read_back_equal() {
    for (I example : calculation().examples()) {
      assertThat(read(Trees.of(example))).isEqualTo(example);
    }
  }

  @Test
  public final void equal_input_gives_an_equal_answer() {
    for (I example : calculation().examples()) {
      assertThat(answer(read(Trees.of(example)))).isEqualTo(answer(example));
    }
  }

  @Test
  public final void other_calculations_reach_it_by_name_with_plain_values() {
    for (I example : calculation().examples()) {
      assertThat(kitchen().calculate(calculation().name(), Trees.of(example)).result())
          .isEqualTo(answer(example).result());
    }
  }

  @Test
  public final void calls_at_the_same_time_give_equal_answers() throws Exception {
    Kitchen kitchen = kitchen();
    for (I example : calculation().examples()) {
      Answer<R> expected = calculation().calculate(example, kitchen);
      Callable<Answer<R>> call = () -> calculation().calculate(example, kitchen);
      for (Answer<R> answer : together(call)) {
        assertThat(answer).isEqualTo(expected);
      }
    }
  }

  private List<Answer<R>> together(Callable<Answer<R>> call) throws InterruptedException {
    ExecutorService threads = Executors.newFixedThreadPool(THREADS);
    try {
      List<Callable<Answer<R>>> calls = new ArrayList<>();
      for (int i = 0; i < CALLS; i++) {
        calls.add(call);
      }
      List<Answer<R>> answers = new ArrayList<>();
      for (Future<Answer<R>> done : threads.invokeAll(calls)) {
        answers.add(done.get());
      }
      return answers;
    } catch (ExecutionException failed) {
      return fail("a call beside others failed: " + failed.getCause(), failed);
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  public final void results_hold_a_value_wherever_one_is_promised() {
    for (I example : calculation().examples()) {
      Trees.leaves(Trees.of(answer(example).result()))
          .forEach((pointer, value) -> assertThat(value).as("result%s", pointer).isNotNull());
    }
  }

  @Test
  public final void numbers_of_results_are_finite() {
    for (I example : calculation().examples()) {
      Trees.leaves(Trees.of(answer(example).result()))
          .forEach(
              (pointer, value) -> {
                if (value instanceof Double number) {
                  assertThat(Double.isFinite(number)).as("result%s, %s", pointer, value).isTrue();
                }
              });
    }
  }

  @Test
  public final void sources_are_rows_of_tables_and_point_into_the_result() {
    for (I example : calculation().examples()) {
      Answer<R> answer = answer(example);
      if (!namesSources()) {
        assertThat(answer.sources()).as("sources, which it says it does not need").isEmpty();
        continue;
      }
      assertThat(answer.sources()).as("sources of %s", example).isNotEmpty();
      Map<String, Object> result = Trees.of(answer.result());
      for (Cited source : answer.sources()) {
        assertSource(source, result);
      }
    }
  }

  private void assertSource(Cited source, Map<String, Object> result) {
    assertThat(source.source()).as("source of %s", source).isNotBlank();
    if (source.basis() != null) { // a row of a table; a shop's own document has no basis
      assertThat(kitchen().table(source.table()).row(source.row())).as("%s", source).isNotNull();
    }
    for (String pointer : source.pointers()) {
      if (!Trees.has(result, pointer)) {
        fail("`%s` leads to nothing in the result; it is cited by %s".formatted(pointer, source));
      }
    }
  }

  @Test
  public final void remarks_have_a_code_and_a_sentence() {
    for (I example : calculation().examples()) {
      for (Remark remark : answer(example).remarks()) {
        assertThat(remark.code()).matches(NAME);
        assertThat(remark.message()).isNotBlank();
        assertThat(remark.pointer()).matches("(/.*)?");
      }
    }
  }

  @Test
  public final void further_forms_of_the_result_are_text_and_always_the_same() {
    calculation()
        .renderings()
        .forEach(
            (mediaType, rendering) -> {
              assertThat(mediaType).matches("[a-z]+/[a-z0-9.+-]+");
              for (I example : calculation().examples()) {
                String text = rendering.apply(answer(example));
                assertThat(text).as(mediaType).isNotBlank();
                assertThat(rendering.apply(answer(example))).isEqualTo(text);
              }
            });
  }
}
