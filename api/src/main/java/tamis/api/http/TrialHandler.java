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
import tamis.engine.trial.Trial;

/** What really happened when formulas were made. */
final class TrialHandler {
  static final String PATH = "/v1/trials";
  private static final String TAG = "trials";

  private final TrialDocuments trials;
  private final DocumentLists lists;

  TrialHandler(TrialDocuments trials, DocumentLists lists) {
    this.trials = trials;
    this.lists = lists;
  }

  void register(Routes routes) {
    routes.get(PATH, this::list);
    routes.post(PATH, this::create);
    routes.get(PATH + "/{id}", this::read);
    routes.put(PATH + "/{id}", this::replace);
    routes.delete(PATH + "/{id}", this::remove);
    routes.get(PATH + "/{id}/revisions", this::revisions);
    routes.get(PATH + "/{id}/revisions/{number}", this::revision);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "listTrials",
      summary = "Lists trials",
      description = "By id, in pages; a word search by the formula that was made.",
      queryParams = {
        @OpenApiParam(
            name = "q",
            description = "Beginnings of words that each one has",
            example = "coffee"),
        @OpenApiParam(
            name = "limit",
            type = Integer.class,
            description = "So many at most, 1 to 1000",
            example = "100"),
        @OpenApiParam(name = "cursor", description = "`next` of the page before")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = DocumentPage.class))
      })
  Reply list(Context call) {
    return lists.list(call);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.POST,
      tags = TAG,
      operationId = "createTrial",
      summary = "Keeps a trial",
      description = "Its id stands in the document and must be new.",
      requestBody =
          @OpenApiRequestBody(
              required = true,
              content = {@OpenApiContent(from = Trial.class)}),
      responses = {
        @OpenApiResponse(
            status = "201",
            description = "Kept",
            content = @OpenApiContent(from = Trial.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "409",
            description = "The id exists",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply create(Context call) throws IOException {
    return trials.create(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "getTrial",
      summary = "Reads a trial",
      description = "With all observations, as PUT takes it.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Trial.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\"")
            }),
        @OpenApiResponse(status = "304", description = "The caller has this already")
      })
  Reply read(Context call) {
    return trials.read(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.PUT,
      tags = TAG,
      operationId = "putTrial",
      summary = "Keeps or replaces a trial",
      description = "`If-Match` with the tag replaces, `If-None-Match: *` makes.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      headers = {
        @OpenApiParam(
            name = "If-Match",
            description = "The tag of what is changed",
            example = "\"1.4\""),
        @OpenApiParam(name = "If-None-Match", description = "`*`: it must be new", example = "*")
      },
      requestBody =
          @OpenApiRequestBody(
              required = true,
              content = {@OpenApiContent(from = Trial.class)}),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Trial.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\"")
            }),
        @OpenApiResponse(
            status = "201",
            description = "Kept",
            content = @OpenApiContent(from = Trial.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "412",
            description = "It is another one by now",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "428",
            description = "No condition was sent",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply replace(Context call) throws IOException {
    return trials.replace(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.DELETE,
      tags = TAG,
      operationId = "deleteTrial",
      summary = "Takes a trial away",
      description = "Its revisions stay.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      headers = {
        @OpenApiParam(
            name = "If-Match",
            description = "The tag of what is changed",
            example = "\"1.4\"")
      },
      responses = {
        @OpenApiResponse(status = "204", description = "Gone"),
        @OpenApiResponse(
            status = "412",
            description = "It is another one by now",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "428",
            description = "No condition was sent",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply remove(Context call) {
    return trials.remove(call);
  }

  @OpenApi(
      path = PATH + "/{id}/revisions",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "listTrialRevisions",
      summary = "Lists the revisions of a trial",
      description = "Oldest first, in pages.",
      pathParams = {@OpenApiParam(name = "id", required = true, example = "t1")},
      queryParams = {
        @OpenApiParam(
            name = "limit",
            type = Integer.class,
            description = "So many at most, 1 to 1000",
            example = "100"),
        @OpenApiParam(name = "cursor", description = "`next` of the page before")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = RevisionPage.class))
      })
  Reply revisions(Context call) {
    return lists.revisions(call);
  }

  @OpenApi(
      path = PATH + "/{id}/revisions/{number}",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "getTrialRevision",
      summary = "Reads a revision of a trial",
      description = "With the observations that came to it.",
      pathParams = {
        @OpenApiParam(name = "id", required = true, example = "t1"),
        @OpenApiParam(name = "number", required = true, type = Integer.class, example = "1")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Trial.class),
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "Revision and later observations",
                  example = "\"1.4\"")
            }),
        @OpenApiResponse(status = "304", description = "The caller has this already")
      })
  Reply revision(Context call) {
    return trials.revision(call);
  }
}
