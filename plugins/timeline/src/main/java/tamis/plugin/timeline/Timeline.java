package tamis.plugin.timeline;

import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * When each stage starts and ends, so that all is ready at one time, or as soon as it can be.
 * Forward and backward pass of the critical-path method; where hands or stations are short, the
 * order of work that ends first (or starts last). With {@code finishAt} every stage comes as late
 * as it can, with {@code startAt} as early.
 */
public final class Timeline implements Calculation<Timeline.Input, Timeline.Result> {

  /** What is to be done, when, where and by how many. */
  @ExactlyOne({"activities", "formulas"})
  public record Input(
      @Described(
              value = "Work that belongs to no formula",
              optional = true,
              fewest = 1,
              most = 10_000)
          List<Activity> activities,
      @Described(
              value = "Formulas that are to be ready at one time: ids, or how much of which",
              optional = true,
              fewest = 1,
              most = 500)
          List<Wanted> formulas,
      @Described(value = "Local time at which all is to be ready", example = "2026-05-01T09:00")
          @Nullable LocalDateTime finishAt,
      @Described(value = "Local time at which work begins", example = "2026-05-01T04:00")
          @Nullable LocalDateTime startAt,
      @Described(
              value = "Local time now; nothing can start before it. Left out, nothing is past",
              example = "2026-05-01T05:30")
          @Nullable LocalDateTime asOf,
      @Described(
              value = "Time zone of all times; without one, every day has 24 hours",
              example = "Europe/Zurich")
          @Nullable Zone zone,
      @Described(
              value = "How many cooks; one unless told",
              atLeast = "1",
              atMost = "1000",
              example = "2")
          @Nullable Integer cooks,
      @Described(
              value = "What stations hold at a time, where not as usual",
              optional = true,
              most = 100)
          List<StationCapacity> stations,
      @Described(
              value = "When hands are there; always, unless told. Rests may lie outside",
              optional = true,
              most = 200)
          List<Shift> shifts,
      @Described(value = "Stages that take longer than planned", optional = true, most = 100)
          List<Delay> delays,
      @Described(
              value = "How far apart stages that meet may finish; 2 min unless told",
              atMost = "7 d",
              example = "2 min")
          @Nullable TimeSpan tolerance) {
    public Input {
      Faults faults = new Faults();
      checkTimes(formulas, finishAt, startAt, shifts, asOf, faults);
      Clock.check("/finishAt", finishAt, zone, faults);
      Clock.check("/startAt", startAt, zone, faults);
      Clock.check("/asOf", asOf, zone, faults);
      checkStations(stations, faults);
      new Activities(activities).check(faults);
      faults.refuseIfAny();
    }

    private static void checkTimes(
        List<Wanted> formulas,
        @Nullable LocalDateTime finishAt,
        @Nullable LocalDateTime startAt,
        List<Shift> shifts,
        @Nullable LocalDateTime asOf,
        Faults faults) {
      boolean none = finishAt == null && startAt == null;
      String allowed = "exactly one of finishAt, startAt";
      if (finishAt != null && startAt != null) {
        String message = "needs " + allowed + ", was given both";
        faults.add(new Fault(FaultCode.EXACTLY_ONE, "", "both", allowed, message));
      } else if (none && (!formulas.isEmpty() || !shifts.isEmpty() || asOf != null)) {
        String message = "needs " + allowed + ", was given none";
        faults.add(new Fault(FaultCode.EXACTLY_ONE, "", "none", allowed, message));
      }
    }

    private static void checkStations(List<StationCapacity> stations, Faults faults) {
      Set<String> seen = new HashSet<>();
      for (int i = 0; i < stations.size(); i++) {
        String name = stations.get(i).name();
        if (!seen.add(Stations.key(name))) {
          faults.add(
              FaultCode.DUPLICATE,
              "/stations/" + i + "/name",
              "station `" + name + "` stands twice");
        }
      }
    }

    boolean isBackward() {
      return finishAt != null;
    }

    int cooksOrOne() {
      return cooks == null ? 1 : cooks;
    }
  }

  /** When all starts and ends. */
  public record Result(
      @Described("Local time at which the first stage starts, if a time was given")
          @Nullable String start,
      @Described("Local time at which the last stage ends, if a time was given")
          @Nullable String finish,
      @Described(value = "From the first start to the last end", unit = "min", headline = true)
          double minutes,
      @Described("Ids of the steps that cannot move at all, in order") List<String> criticalPath,
      @Described("What makes it longer than the stages alone: hands, or names of stations")
          List<String> boundBy,
      @Described("Whether no other order of work is shorter") boolean best,
      @Described(value = "How much shorter another order could be at most", unit = "min")
          double gapMinutes,
      @Described(value = "Every step, the first to start first", table = true) List<Step> steps,
      @Described("Care to take") List<String> cautions,
      @Described("Time zone of the times") @Nullable String zone,
      @Described("Hash of the input, from which calendar entries have their names") String key,
      @Described(
              "When this was settled, as calendars say it: `asOf`, else when the kitchen's documents were last"
                  + " written, else the epoch")
          String stamp,
      @Described("Revision of the kitchen; of two calendar entries the higher one counts")
          long revision) {}

  @Override
  public String name() {
    return "timeline";
  }

  @Override
  public String title() {
    return "When each stage starts, so that all is ready at one time";
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
    return TimelineExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Work work =
        input.activities().isEmpty()
            ? new Formulas(input.formulas(), kitchen, notes).work()
            : new Activities(input.activities()).work();
    Result result = new Planning(input, work, notes, kitchen).result();
    notes.cite(Rule.criticalPath(), "/criticalPath");
    return Answer.of(result, notes);
  }

  @Override
  public Map<String, Function<Answer<Result>, String>> renderings() {
    return Map.of(
        "text/calendar", answer -> new CalendarText(answer.result()).text(),
        "image/svg+xml", answer -> new StationChart(answer.result()).svg());
  }
}
