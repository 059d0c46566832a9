package tamis.engine.kitchen;

import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/** Runs a calculation; a host may guard the run by time and by class loader. */
@FunctionalInterface
public interface Calculator {
  /** Runs it where the caller stands. */
  Calculator DIRECT = Calculation::calculate;

  /**
   * @throws tamis.engine.fault.Refusal if there is no answer
   */
  <I extends Record, R extends Record> Answer<R> run(
      Calculation<I, R> calculation, I input, Kitchen kitchen);
}
