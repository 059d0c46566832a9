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
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.engine.formula.Formula;

/** The shop's formulas. */
final class FormulaHandler {
  private static final String PATH = "/v1/formulas";
  private static final String TAG = "formulas";
  private static final DocumentKind FORMULAS = DocumentKind.ofShop(Kind.FORMULA, PATH);

  private final Documents documents;
  private final DocumentLists lists;

  FormulaHandler(Store store, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.documents = new Documents(FORMULAS, store, kitchens, bodies, settings);
    this.lists = new DocumentLists(FORMULAS, store, settings);
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
      operationId = "listFormulas",
      summary = "Lists formulas",
      description = "By id, in pages; a word search by beginnings of words.",
      queryParams = {
        @OpenApiParam(
            name = "q",
            description = "Beginnings of words that each one has",
            example = "coffee cream"),
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
      operationId = "createFormula",
      summary = "Makes a formula",
      description = "Its id stands in the document and must be new.",
      requestBody =
          @OpenApiRequestBody(required = true, content = @OpenApiContent(from = Formula.class)),
      responses = {
        @OpenApiResponse(
            status = "201",
            description = "Made",
            content = @OpenApiContent(from = Formula.class),
            headers = {
              @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "409",
            description = "The id exists",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply create(Context call) throws IOException {
    return documents.create(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "getFormula",
      summary = "Reads a formula",
      description = "What is read is what PUT takes.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "brioche"),
      headers =
          @OpenApiParam(
              name = "If-None-Match",
              description = "A revision that the caller has",
              example = "\"3\""),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Formula.class),
            headers =
                @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\"")),
        @OpenApiResponse(status = "304", description = "The caller has this revision")
      })
  Reply read(Context call) {
    return documents.read(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.PUT,
      tags = TAG,
      operationId = "putFormula",
      summary = "Makes or replaces a formula",
      description = "`If-Match` with the revision replaces, `If-None-Match: *` makes.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "brioche"),
      headers = {
        @OpenApiParam(
            name = "If-Match",
            description = "The revision that is changed",
            example = "\"3\""),
        @OpenApiParam(name = "If-None-Match", description = "`*`: it must be new", example = "*")
      },
      requestBody =
          @OpenApiRequestBody(required = true, content = @OpenApiContent(from = Formula.class)),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Formula.class),
            headers = {
              @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "201",
            description = "Made",
            content = @OpenApiContent(from = Formula.class),
            headers = {
              @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "412",
            description = "The condition does not hold",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "428",
            description = "A condition is needed",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply replace(Context call) throws IOException {
    return documents.replace(call);
  }

  @OpenApi(
      path = PATH + "/{id}",
      methods = HttpMethod.DELETE,
      tags = TAG,
      operationId = "deleteFormula",
      summary = "Deletes a formula",
      description = "Its revisions stay.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "brioche"),
      headers =
          @OpenApiParam(
              name = "If-Match",
              description = "The revision that is changed",
              example = "\"3\""),
      responses = {
        @OpenApiResponse(status = "204", description = "Deleted"),
        @OpenApiResponse(
            status = "409",
            description = "It is in use",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "412",
            description = "The condition does not hold",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "428",
            description = "A condition is needed",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply remove(Context call) {
    return documents.remove(call);
  }

  @OpenApi(
      path = PATH + "/{id}/revisions",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "listFormulaRevisions",
      summary = "Lists the revisions of a formula",
      description = "Oldest first, in pages, those of a deleted one too.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "brioche"),
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
      operationId = "getFormulaRevision",
      summary = "Reads a formula as it was",
      description = "A revision never changes.",
      pathParams = {
        @OpenApiParam(name = "id", required = true, example = "brioche"),
        @OpenApiParam(name = "number", type = Integer.class, required = true, example = "1")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Formula.class),
            headers = @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""))
      })
  Reply revision(Context call) {
    return documents.revision(call);
  }
}
