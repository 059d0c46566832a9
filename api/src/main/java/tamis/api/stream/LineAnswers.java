package tamis.api.stream;

import java.util.LinkedHashMap;
import java.util.Map;
import tamis.api.plugin.Guard;
import tamis.api.representation.Format;
import tamis.api.representation.Formats;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.Problem;
import tamis.api.representation.Query;
import tamis.api.representation.ResultJson;
import tamis.api.representation.StrictJson;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;
import tamis.engine.record.Limits;
import tamis.engine.spi.Calculation;

/** Answers lines: each an input of one calculation, all at one revision of the kitchen. */
public final class LineAnswers<I extends Record, R extends Record> {
  /** The media type of one JSON value a line. */
  public static final String CONTENT_TYPE = "application/x-ndjson";

  private final Calculation<I, R> calculation;
  private final Query query;
  private final Pantry kitchen;
  private final Guard guard;
  private final Reading reading;

  /**
   * How lines are read.
   *
   * @param lineBytes bytes of a line that are read
   * @param json limits of the JSON of a line
   * @param limits of what an input may count
   */
  public record Reading(int lineBytes, JsonLimits json, Limits limits) {}

  /**
   * What is answered to a line.
   *
   * @param bytes one line of JSON, without its end
   * @param isProblem whether it says why there is no answer
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on once, and never compared
  public record Answered(byte[] bytes, boolean isProblem) {}

  private LineAnswers(
      Calculation<I, R> calculation, Query query, Pantry kitchen, Guard guard, Reading reading) {
    this.calculation = calculation;
    this.query = query;
    this.kitchen = kitchen;
    this.guard = guard;
    this.reading = reading;
  }

  /**
   * @param query how to answer every line
   * @throws Refusal if the query cannot be meant, or wants another form than JSON
   */
  public static <I extends Record, R extends Record> LineAnswers<I, R> of(
      Calculation<I, R> calculation, Query query, Pantry kitchen, Guard guard, Reading reading) {
    if (!query.faults().isEmpty()) {
      throw new Refusal(query.faults());
    }
    if (!Formats.choose(query.options(), false, null, calculation).equals(Format.JSON)) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/format",
              query.options().format(),
              "json",
              "a stream is answered in JSON, a line each; `format` says "
                  + query.options().format()));
    }
    return new LineAnswers<>(calculation, query, kitchen, guard, reading);
  }

  public int lineBytes() {
    return reading.lineBytes();
  }

  /** The answer to the line that was gone to, or the problem with it. */
  public Answered answer(InputLines lines) {
    try {
      if (lines.isTooLong()) {
        throw tooLong();
      }
      return new Answered(guard.run(calculation.name(), () -> answered(lines)), false);
    } catch (Refusal refusal) {
      return problem(lines.number(), Problem.of(refusal));
    }
  }

  private byte[] answered(InputLines line) {
    var tree = StrictJson.tree(line.shared(), line.length(), reading.json());
    I input = query.input(calculation.input(), tree, kitchen, reading.limits());
    var answer = calculation.calculate(input, kitchen);
    return ResultJson.answer(calculation.name(), answer, kitchen.revision(), query.options());
  }

  private Refusal tooLong() {
    return new Refusal(
        new Fault(
            FaultCode.TOO_LARGE,
            "",
            null,
            "at most " + reading.lineBytes() + " bytes",
            "the line has more than the " + reading.lineBytes() + " bytes that are read"));
  }

  /** A problem in place of the answer to a line. */
  public static Answered problem(long line, Problem problem) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("line", line);
    told.put("problem", problem);
    return new Answered(ResultJson.bytes(told), true);
  }
}
