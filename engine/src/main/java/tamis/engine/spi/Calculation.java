package tamis.engine.spi;

import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * One calculation that callers reach by name. An implementation is pure: equal input and equal
 * kitchen give an equal answer; it has no clock, no I/O and no state that changes, and may be
 * called by many threads at once. It is called only with an input that was read without fault.
 *
 * @param <I> input: a public record, every component {@code @Described}, in quantity types
 * @param <R> result: a public record, every component {@code @Described}, plain numbers with the
 *     unit in their name
 */
public interface Calculation<I extends Record, R extends Record> {
  /** A noun of the trade in lower-case words with hyphens; never null, always the same. */
  String name();

  /** What it answers, in one short sentence for a person. */
  String title();

  Class<I> input();

  Class<R> result();

  /** Inputs that answer without fault; shown in the catalogue and run by its test. */
  List<I> examples();

  /**
   * The answer.
   *
   * @param input valid in itself
   * @param kitchen one consistent revision of everything that can be looked up
   * @return never null
   * @throws tamis.engine.fault.Refusal if there is no answer; pointers are relative to the input
   */
  Answer<R> calculate(I input, Kitchen kitchen);

  /** Further forms of the result, by media type: pure functions that give text (SVG, iCalendar). */
  default Map<String, Function<Answer<R>, String>> renderings() {
    return Map.of();
  }

  /** Whether it reads trials, so that its answers change when a trial does. */
  default boolean readsTrials() {
    return false;
  }
}
