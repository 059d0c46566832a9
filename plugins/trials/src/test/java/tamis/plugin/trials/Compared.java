package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

/** Trials of a butter cream, and the comparison of them as a caller asks for it. */
final class Compared {
  private Compared() {}

  static final Plugin CHECK = new StandIns(new StandIns.Check());

  /** Three kept with butter inside its window, three gone wrong with butter too cold. */
  static Book six() {
    return Book.ofCream()
        .trial("t1", "cream@1", "kept", "temper 19; syrup 118; mix 22", "roomTemperature", "21 °C")
        .trial(
            "t2",
            "cream@1",
            "discarded",
            "temper 15; syrup 119; mix 17 22",
            "roomTemperature",
            "20 °C")
        .trial("t3", "cream@1", "kept", "temper 20; syrup 117; mix 23", "roomTemperature", "22 °C")
        .trial(
            "t4",
            "cream@1",
            "discarded",
            "temper 12; syrup 118; mix 16",
            "roomTemperature",
            "22 °C")
        .trial(
            "t5",
            "cream@1",
            "recovered",
            "temper 16.5; syrup 120; mix 18 22",
            "roomTemperature",
            "21 °C")
        .trial("t6", "cream@1", "kept", "temper 18; syrup 119; mix 21", "roomTemperature", "20 °C")
        .trial("t7", "cream@1", "", "temper 19; syrup 111; mix 23", "roomTemperature", "20 °C")
        .trial("t8", "cream@2", "", "temper 19; syrup 116; mix 23", "roomTemperature", "20 °C");
  }

  static Answer<TrialComparison.Result> compared(Kitchen kitchen, Map<String, ?> input) {
    return new TrialComparison()
        .calculate(
            new RecordReader((tamis.engine.record.References) kitchen, Limits.usual())
                .read(TrialComparison.Input.class, input),
            kitchen);
  }

  static Answer<TrialComparison.Result> compared(Book book, Object... more) {
    Map<String, Object> input = Book.map("trials", List.copyOf(book.trialIds()));
    input.putAll(Book.map(more));
    return compared(book.kitchen(CHECK), input);
  }

  static Answer<TrialComparison.Result> of(Book book, String... trials) {
    return compared(book.kitchen(CHECK), Map.of("trials", List.of(trials)));
  }

  static Difference difference(TrialComparison.Result result, String stage, String measure) {
    return result.differences().stream()
        .filter(one -> stage.equals(String.valueOf(one.stage())) && one.measure().equals(measure))
        .findFirst()
        .orElseThrow();
  }

  static List<Fault> faults(Runnable call) {
    Refusal refusal = catchThrowableOfType(Refusal.class, call::run);
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }
}
