package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.representation.Answers;
import tamis.api.representation.Catalogue;
import tamis.api.representation.Format;
import tamis.api.representation.Formats;
import tamis.api.representation.Options;
import tamis.api.representation.Problem;
import tamis.api.representation.Query;
import tamis.api.representation.QueryInput;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.Nearest;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;

/** Calls calculations: reads the input, asks, and writes the answer in the form that is wanted. */
final class CalculationHandler {
  private static final String CSV_ENDING = ".csv";

  private final Plugins plugins;
  private final Kitchens kitchens;
  private final Bodies bodies;
  private final AnswerCache cache;
  private final FormTags tags;
  private final Limits limits;
  private final int longestQuery;

  CalculationHandler(Plugins plugins, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.plugins = plugins;
    this.kitchens = kitchens;
    this.bodies = bodies;
    this.cache = new AnswerCache(settings.cacheBytes());
    this.tags = new FormTags(plugins);
    this.limits = settings.limits();
    this.longestQuery = settings.queryBytes();
  }

  void register(Routes routes) {
    routes.get("/v1/calculations/{name}", this::get);
    routes.post("/v1/calculations/{name}", this::post);
    routes.get("/v1/calculations", this::list);
  }

  @OpenApi(
      path = "/v1/calculations",
      methods = HttpMethod.GET,
      tags = "calculations",
      operationId = "listCalculations",
      summary = "Lists calculations",
      description = "Name, title, plugin, schemas of input and result, examples.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(mimeType = "application/json", type = "object")))
  Reply list(Context call) {
    QueryInput.plain(call.queryString(), longestQuery);
    return Reply.json(Catalogue.bytes(plugins.offered(), plugins.switchedOff()));
  }

  Reply get(Context call) {
    @Nullable String query = call.req().getQueryString();
    @Nullable String accept = call.req().getHeader("Accept");
    String address = call.req().getRequestURI() + "?" + query + " " + accept;
    var asked = Asked.of(call.pathParam("name"), accept);
    var now = kitchens.latest();
    var at = at(asked.name(), now);
    @Nullable Reply known = cache.reply(address, at);
    if (known != null) {
      return known;
    }
    return withTextErrors(
        query,
        () -> {
          var reply = got(calculation(asked.name()), asked, query, now);
          cache.keep(address, at, reply);
          return reply;
        });
  }

  /** What the path and the header say. */
  private record Asked(String name, boolean csvEnding, @Nullable String accept) {
    static Asked of(String name, @Nullable String accept) {
      boolean csv = name.endsWith(CSV_ENDING);
      String plain = csv ? name.substring(0, name.length() - CSV_ENDING.length()) : name;
      return new Asked(plain, csv, accept);
    }
  }

  private AnswerCache.At at(String name, Kitchens.Now now) {
    @Nullable Calculation<?, ?> calculation = plugins.calculation(name);
    boolean readsTrials = calculation != null && calculation.readsTrials();
    return new AnswerCache.At(now.revision(), readsTrials ? now.trials() : 0);
  }

  private <I extends Record, R extends Record> Reply got(
      Calculation<I, R> calculation, Asked asked, @Nullable String raw, Kitchens.Now now) {
    return guarded(
        calculation,
        () -> {
          var query = QueryInput.read(raw, calculation, longestQuery);
          var format = format(query, asked, calculation);
          var input = query.input(calculation.input(), now.kitchen(), limits);
          var reply = written(calculation, input, 0, now, format, query.options());
          return reply.ofForm(tags.of(asked.name(), format, raw, at(asked.name(), now)));
        });
  }

  Reply post(Context call) throws IOException {
    @Nullable String query = call.req().getQueryString();
    var asked = Asked.of(call.pathParam("name"), call.req().getHeader("Accept"));
    try {
      var calculation = calculation(asked.name());
      var body = bodies.read(call);
      return withTextErrors(query, () -> posted(calculation, asked, query, body));
    } catch (Refusal refusal) {
      return withTextErrors(query, () -> thrown(refusal));
    }
  }

  private static Reply thrown(Refusal refusal) {
    throw refusal;
  }

  private <I extends Record, R extends Record> Reply posted(
      Calculation<I, R> calculation, Asked asked, @Nullable String raw, Bodies.Read body) {
    var now = kitchens.latest();
    return guarded(
        calculation,
        () -> {
          var query = QueryInput.options(raw, calculation, longestQuery);
          var format = format(query, asked, calculation);
          var input = query.input(calculation.input(), body.tree(), now.kitchen(), limits);
          return written(calculation, input, body.length(), now, format, query.options());
        });
  }

  private static Format format(Query query, Asked asked, Calculation<?, ?> calculation) {
    return Formats.choose(query.options(), asked.csvEnding(), asked.accept(), calculation);
  }

  private <I extends Record, R extends Record> Reply written(
      Calculation<I, R> calculation,
      I input,
      int inputBytes,
      Kitchens.Now now,
      Format format,
      Options options) {
    Answer<R> answer =
        cache.answer(
            calculation.name(),
            input,
            inputBytes,
            at(calculation.name(), now),
            () -> calculation.calculate(input, now.kitchen()));
    var body = Answers.body(calculation, answer, now.revision(), format, options);
    return Reply.of(200, body.contentType(), body.bytes());
  }

  private <T> T guarded(Calculation<?, ?> calculation, Supplier<T> work) {
    return plugins.guard(calculation.name()).run(calculation.name(), work);
  }

  private Calculation<?, ?> calculation(String name) {
    return calculation(plugins, name);
  }

  /**
   * @throws Refusal {@code unknown-calculation} if there is none of this name
   */
  static Calculation<?, ?> calculation(Plugins plugins, String name) {
    @Nullable Calculation<?, ?> calculation = plugins.calculation(name);
    if (calculation == null) {
      throw Refusal.of(
          FaultCode.UNKNOWN_CALCULATION,
          "no calculation `" + name + "`" + Nearest.suggestion(name, plugins.names()));
    }
    return calculation;
  }

  /** Faults as a short text with status 200, for the cells of a spreadsheet, if that is wanted. */
  static Reply withTextErrors(@Nullable String query, Supplier<Reply> work) {
    try {
      return work.get();
    } catch (Refusal refusal) {
      if (!QueryInput.wantsTextErrors(query)) {
        throw refusal;
      }
      var text = Problem.of(refusal).text().getBytes(StandardCharsets.UTF_8);
      return Reply.of(200, Format.TEXT.contentType(), text);
    }
  }
}
