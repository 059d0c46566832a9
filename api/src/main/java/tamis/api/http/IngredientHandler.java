package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiParam;
import io.javalin.openapi.OpenApiRequestBody;
import io.javalin.openapi.OpenApiResponse;
import java.io.IOException;
import java.time.Clock;
import tamis.api.representation.Problem;
import tamis.api.store.Document;
import tamis.api.store.Kind;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;

/** Ingredients: the built-in ones, and the shop's own that add to them or replace them. */
final class IngredientHandler {
  private static final String PATH = "/v1/ingredients";
  private static final String TAG = "ingredients";
  private static final DocumentKind INGREDIENTS =
      new DocumentKind(Kind.INGREDIENT, PATH, () -> BuiltIn.STORE);

  /** The reference ingredients as documents, written out when first asked for. */
  private static final class BuiltIn {
    static final Store STORE = new MemoryStore(Clock.systemUTC());

    static {
      for (var ingredient : ReferenceIngredients.standard().all()) {
        STORE.create(Document.of(ingredient), "engine");
      }
    }
  }

  private final Documents documents;
  private final DocumentLists lists;

  IngredientHandler(Store store, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.documents = new Documents(INGREDIENTS, store, kitchens, bodies, settings);
    this.lists = new DocumentLists(INGREDIENTS, store, settings);
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
      operationId = "listIngredients",
      summary = "Lists ingredients",
      description = "By id, in pages; a word search by beginnings of words.",
      queryParams = {
        @OpenApiParam(
            name = "q",
            description = "Beginnings of words that each one has",
            example = "butter"),
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
      operationId = "createIngredient",
      summary = "Makes an ingredient",
      description = "Its id stands in the document and must be new.",
      requestBody =
          @OpenApiRequestBody(required = true, content = @OpenApiContent(from = Ingredient.class)),
      responses = {
        @OpenApiResponse(
            status = "201",
            description = "Made",
            content = @OpenApiContent(from = Ingredient.class),
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
      operationId = "getIngredient",
      summary = "Reads an ingredient",
      description = "What is read is what PUT takes.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "egg"),
      headers =
          @OpenApiParam(
              name = "If-None-Match",
              description = "A revision that the caller has",
              example = "\"3\""),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Ingredient.class),
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
      operationId = "putIngredient",
      summary = "Makes or replaces an ingredient",
      description = "`If-Match` with the revision replaces, `If-None-Match: *` makes.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "egg"),
      headers = {
        @OpenApiParam(
            name = "If-Match",
            description = "The revision that is changed",
            example = "\"3\""),
        @OpenApiParam(name = "If-None-Match", description = "`*`: it must be new", example = "*")
      },
      requestBody =
          @OpenApiRequestBody(required = true, content = @OpenApiContent(from = Ingredient.class)),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Ingredient.class),
            headers = {
              @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""),
              @OpenApiParam(name = "Location", description = "Where it is read")
            }),
        @OpenApiResponse(
            status = "201",
            description = "Made",
            content = @OpenApiContent(from = Ingredient.class),
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
      operationId = "deleteIngredient",
      summary = "Deletes an ingredient",
      description = "Its revisions stay.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "egg"),
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
      operationId = "listIngredientRevisions",
      summary = "Lists the revisions of an ingredient",
      description = "Oldest first, in pages, those of a deleted one too.",
      pathParams = @OpenApiParam(name = "id", required = true, example = "egg"),
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
      operationId = "getIngredientRevision",
      summary = "Reads an ingredient as it was",
      description = "A revision never changes.",
      pathParams = {
        @OpenApiParam(name = "id", required = true, example = "egg"),
        @OpenApiParam(name = "number", type = Integer.class, required = true, example = "1")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Ingredient.class),
            headers = @OpenApiParam(name = "ETag", description = "The revision", example = "\"3\""))
      })
  Reply revision(Context call) {
    return documents.revision(call);
  }
}
