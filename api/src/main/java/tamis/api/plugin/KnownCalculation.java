package tamis.api.plugin;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * A dropped-in calculation, asked once for all that it says of itself: later only its work is left
 * to call, and that is watched.
 */
record KnownCalculation<I extends Record, R extends Record>(
    String name,
    String title,
    Class<I> input,
    Class<R> result,
    List<I> examples,
    Map<String, Function<Answer<R>, String>> renderings,
    boolean readsTrials,
    Calculation<I, R> work)
    implements Calculation<I, R> {

  static <I extends Record, R extends Record> KnownCalculation<I, R> of(Calculation<I, R> work) {
    return new KnownCalculation<>(
        work.name(),
        work.title(),
        work.input(),
        work.result(),
        List.copyOf(work.examples()),
        Map.copyOf(work.renderings()),
        work.readsTrials(),
        work);
  }

  @Override
  public Answer<R> calculate(I input, Kitchen kitchen) {
    return work.calculate(input, kitchen);
  }
}
