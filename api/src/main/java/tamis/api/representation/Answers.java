package tamis.api.representation;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;

/** Writes answers of calculations in the form that was chosen. */
public final class Answers {
  private Answers() {}

  /**
   * @throws Refusal if nothing is at the place that is picked, or the calculation broke its word
   */
  public static <R extends Record> Body body(
      Calculation<?, R> calculation,
      Answer<R> answer,
      long revision,
      Format format,
      Options options) {
    return new Body(format.contentType(), bytes(calculation, answer, revision, format, options));
  }

  private static <R extends Record> byte[] bytes(
      Calculation<?, R> calculation,
      Answer<R> answer,
      long revision,
      Format format,
      Options options) {
    if (format.equals(Format.JSON)) {
      return ResultJson.answer(calculation.name(), answer, revision, options);
    }
    if (format.equals(Format.CSV)) {
      return ResultCsv.of(answer.result(), options);
    }
    if (format.equals(Format.TEXT)) {
      return ResultText.of(answer.result(), options).getBytes(StandardCharsets.UTF_8);
    }
    Map<String, Function<Answer<R>, String>> renderings = calculation.renderings();
    @Nullable Function<Answer<R>, String> rendering = renderings.get(format.mediaType());
    if (rendering == null) {
      throw Refusal.of(
          FaultCode.UNACCEPTABLE, "this calculation is not given as " + format.mediaType());
    }
    return rendering.apply(answer).getBytes(StandardCharsets.UTF_8);
  }
}
