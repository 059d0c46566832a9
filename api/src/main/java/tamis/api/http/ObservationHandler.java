package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiParam;
import io.javalin.openapi.OpenApiRequestBody;
import io.javalin.openapi.OpenApiResponse;
import java.io.IOException;
import tamis.api.representation.Problem;
import tamis.engine.trial.Observation;

/** What was read, weighed and tasted in a trial; added one by one. */
final class ObservationHandler {
  private static final String PATH = "/v1/trials/{id}/observations";
  private static final String TAG = "trials";

  private final TrialDocuments trials;

  ObservationHandler(TrialDocuments trials) {
    this.trials = trials;
  }

  void register(Routes routes) {
    routes.get(PATH, this::observations);
    routes.post(PATH, this::observe);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "listObservations",
      summary = "Lists the observations of a trial",
      description = "In the order in which they came.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = ObservationList.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\"")
            }),
        @OpenApiResponse(status = "304", description = "The caller has this already")
      })
  Reply observations(Context call) {
    return trials.observations(call);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.POST,
      tags = TAG,
      operationId = "addObservation",
      summary = "Adds an observation to a trial",
      description =
          "Its id is the caller's own: sent again, the same is answered 200, another 409.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      requestBody =
          @OpenApiRequestBody(
              required = true,
              content = {@OpenApiContent(from = Observation.class)}),
      responses = {
        @OpenApiResponse(
            status = "201",
            description = "Kept",
            content = @OpenApiContent(from = Observation.class),
            headers = {@OpenApiParam(name = "Location", description = "Where it is read")}),
        @OpenApiResponse(
            status = "200",
            description = "It was there already",
            content = @OpenApiContent(from = Observation.class),
            headers = {@OpenApiParam(name = "Location", description = "Where it is read")}),
        @OpenApiResponse(
            status = "409",
            description = "Another one has this id",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply observe(Context call) throws IOException {
    return trials.observe(call);
  }
}
