package tamis.plugin.trials;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Pressure;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * Two or more trials of one formula beside each other, by stage and measure. Differences stand in
 * the order of their distance from the window, in widths, times how well they tell the outcomes
 * apart (half where that is not known). With three trials of each outcome, measures that separate
 * them no more than one time in ten by chance (exact permutation test on ranks) are named as
 * candidates; with fewer, none is. One change is told to try next.
 */
public final class TrialComparison
    implements Calculation<TrialComparison.Input, TrialComparison.Result> {
  static final int MOST_TRIALS = 60;

  /** Which trials, and where they were made. */
  @ExactlyOne({"trials", "formula"})
  public record Input(
      @Described(value = "Ids of the trials", optional = true, fewest = 2, most = MOST_TRIALS)
          List<String> trials,
      @Described(
              value = "All trials of this formula, of any revision",
              example = "coffee-meringue-cream")
          @Nullable FormulaRef formula,
      @Described("What a trial counts as that was recovered; as gone wrong if left out")
          @Nullable Recovered recovered,
      @Described(
              value = "Height above the sea",
              atLeast = "-500 m",
              atMost = "6000 m",
              example = "1500 m")
          @Nullable Length altitude,
      @Described(
              value = "Pressure of the air, measured here",
              atLeast = "40 kPa",
              atMost = "110 kPa",
              example = "845 hPa")
          @Nullable Pressure pressure,
      @Described(
              value = "What the same thermometer shows in boiling water",
              atLeast = "70 °C",
              atMost = "110 °C",
              example = "95.5 °C")
          @Nullable Temperature boilingWater) {
    public Input {
      Faults faults = new Faults();
      Set<String> seen = new HashSet<>();
      for (int i = 0; i < trials.size(); i++) {
        if (!seen.add(trials.get(i))) {
          faults.add(
              new Fault(
                  FaultCode.DUPLICATE,
                  "/trials/" + i,
                  trials.get(i),
                  null,
                  "trial `" + trials.get(i) + "` stands twice"));
        }
      }
      if (formula != null && (formula.id() == null || formula.revision() != null)) {
        faults.add(
            FaultCode.INCONSISTENT,
            "/formula",
            "trials are kept by the id of a stored formula; name it without a revision");
      }
      faults.refuseIfAny();
    }

    Recovered recoveredOrWrong() {
      return recovered == null ? Recovered.GONE_WRONG : recovered;
    }
  }

  /** What a recovered trial counts as. */
  public enum Recovered {
    GONE_WRONG,
    KEPT,
    LEFT_OUT
  }

  /** What differed, what goes with the outcome, and what to try. */
  public record Result(
      @Described(value = "The formula", example = "coffee-meringue-cream") String formula,
      @Described("The trials, in the order in which they were asked for") List<TriedTrial> trials,
      @Described(value = "What differs, the weightiest first", table = true)
          List<Difference> differences,
      @Described("Measures that go with the outcome, the strongest first; none if too few trials")
          List<LikelyCause> candidates,
      @Described("What can be said of the cause") String conclusion,
      @Described("How many measures could have been named as a candidate") int looks,
      @Described("The one change to try next") NextChange changeNext,
      @Described("What the discarded trials cost") Lost lost,
      @Described("Stages with a window that were not read in every trial") List<Unread> unread,
      @Described("All readings by time, as they are drawn") List<SeriesPoint> readings) {}

  @Override
  public String name() {
    return "trial-comparison";
  }

  @Override
  public String title() {
    return "What differed between trials, what goes with failure, and what to try next";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return List.of(
        new Input(List.of("t1", "t2"), null, null, null, null, null),
        new Input(
            List.of("t1", "t2", "t3", "t4", "t5", "t6", "t7", "t8"),
            null,
            null,
            Length.ofMetres(300),
            null,
            null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Comparison(input, kitchen).answer();
  }

  @Override
  public boolean readsTrials() {
    return true;
  }

  @Override
  public Map<String, Function<Answer<Result>, String>> renderings() {
    return Map.of("image/svg+xml", answer -> new ReadingChart(answer.result()).svg());
  }
}
