package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiParam;
import io.javalin.openapi.OpenApiRequestBody;
import io.javalin.openapi.OpenApiResponse;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.QueryInput;
import tamis.api.stream.LineAnswers;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Calculation;

/** Calls one calculation for every line of a body. */
final class StreamHandler {
  /** Threads that streams may hold, however long; the rest stays free for everybody else. */
  private static final int MOST_AT_ONCE = 50;

  /** Times that a caller may stay silent, taken together; then it must send at some rate. */
  private static final int DRIPS_BORNE = 3;

  private final Plugins plugins;
  private final Kitchens kitchens;
  private final LineAnswers.Reading reading;
  private final int longestQuery;
  private final Duration patience;
  private final Semaphore places = new Semaphore(MOST_AT_ONCE);

  StreamHandler(Plugins plugins, Kitchens kitchens, ServerSettings settings) {
    this.plugins = plugins;
    this.kitchens = kitchens;
    this.longestQuery = settings.queryBytes();
    this.patience = settings.sender().multipliedBy(DRIPS_BORNE);
    this.reading =
        new LineAnswers.Reading(
            settings.lineBytes(),
            new JsonLimits(settings.nesting(), settings.limits().digits()),
            settings.limits());
  }

  void register(Routes routes) {
    routes.post("/v1/calculations/{name}/stream", this::stream);
  }

  @OpenApi(
      path = "/v1/calculations/{name}/stream",
      methods = HttpMethod.POST,
      tags = "calculations",
      operationId = "streamCalculation",
      summary = "Answers every line of a body",
      description =
          "One JSON input a line; one answer a line, in their order, or"
              + " `{\"line\":n,\"problem\":{…}}`. Blank lines are counted and not answered."
              + " Read while you send. The options of the query are those of the calculation.",
      pathParams =
          @OpenApiParam(
              name = "name",
              description = "Name of the calculation",
              required = true,
              example = "conversion"),
      queryParams = {
        @OpenApiParam(
            name = "sources",
            description = "`no` leaves the sources out of every answer",
            example = "no"),
        @OpenApiParam(
            name = "pick",
            description = "JSON Pointer into every result",
            example = "/amount")
      },
      requestBody =
          @OpenApiRequestBody(
              required = true,
              content = @OpenApiContent(mimeType = LineAnswers.CONTENT_TYPE, from = String.class)),
      responses =
          @OpenApiResponse(
              status = "200",
              description = "One answer or problem a line",
              content = @OpenApiContent(mimeType = LineAnswers.CONTENT_TYPE, from = String.class)))
  Reply stream(Context call) {
    @Nullable String query = call.req().getQueryString();
    return CalculationHandler.withTextErrors(query, () -> reply(call, query));
  }

  private Reply reply(Context call, @Nullable String query) {
    var calculation = CalculationHandler.calculation(plugins, call.pathParam("name"));
    var lines = LineBody.of(call.req());
    LineBody.refuseOtherAnswer(call.req().getHeader("Accept"));
    var answers = answers(calculation, query);
    return Reply.streamed(
        LineAnswers.CONTENT_TYPE,
        (in, out) -> {
          try {
            new StreamedLines(in, out, answers, patience).copy(lines);
          } finally {
            places.release();
          }
        });
  }

  private <I extends Record, R extends Record> LineAnswers<I, R> answers(
      Calculation<I, R> calculation, @Nullable String raw) {
    var query = QueryInput.options(raw, calculation, longestQuery);
    var guard = plugins.guard(calculation.name());
    var answers = LineAnswers.of(calculation, query, kitchens.now(), guard, reading);
    if (!places.tryAcquire()) {
      throw Refusal.of(
          FaultCode.TOO_OFTEN, "too many streams are open at this moment; try again in 5 s");
    }
    return answers;
  }
}
