package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import com.atlassian.oai.validator.OpenApiInteractionValidator;
import com.atlassian.oai.validator.restassured.OpenApiValidationFilter;
import io.restassured.specification.RequestSpecification;
import io.swagger.v3.parser.OpenAPIV3Parser;
import java.time.Clock;
import java.time.Duration;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.api.store.MemoryStore;
import tamis.api.version.Versions;

/** The served description, and that what is served keeps to it. */
class DescriptionTest {
  private static final Pattern OUTSIDE =
      Pattern.compile("(src|href|url\\()\\s*=?\\s*[\"']?https?:");

  private static Served served;
  private static OpenApiValidationFilter described;

  @BeforeAll
  static void open() {
    served = Served.usual();
    served.holding(
        "plain-cream", "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
    var validator =
        OpenApiInteractionValidator.createForInlineApiSpecification(
                served.ask().get("/openapi.json").body().asString())
            .build();
    described = new OpenApiValidationFilter(validator);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static RequestSpecification ask() {
    return served.ask().filter(described);
  }

  @Test
  void every_route_is_described_and_nothing_else() {
    var document =
        new OpenAPIV3Parser()
            .readContents(served.ask().get("/openapi.json").body().asString(), null, null);
    assertThat(document.getMessages()).isEmpty();
    var told = new TreeSet<String>();
    document
        .getOpenAPI()
        .getPaths()
        .forEach(
            (path, item) ->
                item.readOperationsMap()
                    .keySet()
                    .forEach(verb -> told.add(verb + " " + folded(path))));
    var routed = new TreeSet<String>();
    Server.routes(
            Served.with().settings(),
            new MemoryStore(Clock.systemUTC()),
            Served.plugins(null, Duration.ofSeconds(10)),
            Versions.ofThisBuild(),
            new Metrics())
        .verbs()
        .forEach((path, verbs) -> verbs.forEach(verb -> routed.add(verb + " " + path)));
    routed.removeIf(route -> route.startsWith("OPTIONS") || route.startsWith("HEAD"));
    routed.removeIf(route -> route.contains(" /docs/"));
    assertThat(told).containsExactlyElementsOf(routed);
  }

  @Test
  void what_keeps_documents_tells_that_the_store_may_be_full_or_away() {
    var paths =
        new OpenAPIV3Parser()
            .readContents(served.ask().get("/openapi.json").body().asString(), null, null)
            .getOpenAPI()
            .getPaths();
    var keeping = new TreeSet<String>();
    paths.forEach(
        (path, item) ->
            item.readOperationsMap()
                .forEach(
                    (verb, operation) -> {
                      assertThat(operation.getResponses()).as(path).containsKey("503");
                      if (operation.getResponses().containsKey("507")) {
                        keeping.add(verb + " " + path);
                      }
                    }));
    assertThat(keeping)
        .contains(
            "POST /v1/formulas",
            "PUT /v1/formulas/{id}",
            "DELETE /v1/formulas/{id}",
            "PUT /v1/ingredients/{id}",
            "PUT /v1/prices",
            "POST /v1/trials/{id}/observations",
            "DELETE /v1/trials/{id}")
        .noneMatch(told -> told.startsWith("GET") || told.contains("/calculations"));
  }

  /** Each calculation has a path of its own in the description, and one route serves them all. */
  private static String folded(String path) {
    return path.replaceFirst("^/v1/calculations/[^/]+", "/v1/calculations/{name}");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/v1/formulas",
        "/v1/formulas?q=cream&limit=5",
        "/v1/formulas/plain-cream",
        "/v1/formulas/plain-cream/revisions",
        "/v1/formulas/plain-cream/revisions/1",
        "/v1/ingredients?limit=3",
        "/v1/ingredients/egg",
        "/v1/tables",
        "/v1/tables/densities",
        "/v1/calculations",
        "/health/live",
        "/health/ready",
        "/v1/calculations/conversion?quantity=1%20stick&ingredient=butter-unsalted&unit=g",
        "/v1/calculations/scaling?formula=plain-cream&to.factor=2"
      })
  void what_is_answered_keeps_to_the_description(String address) {
    ask().get(address).then().statusCode(200);
  }

  @Test
  void what_is_written_keeps_to_the_description() {
    var document = "{\"id\":\"soup\",\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"1 kg\"}]}";
    ask()
        .contentType("application/json")
        .body(document)
        .post("/v1/formulas")
        .then()
        .statusCode(201);
    ask()
        .contentType("application/json")
        .header("If-Match", "\"1\"")
        .body(document)
        .put("/v1/formulas/soup")
        .then()
        .statusCode(200);
    ask().header("If-Match", "\"2\"").delete("/v1/formulas/soup").then().statusCode(204);
    ask().get("/v1/formulas/soup").then().statusCode(404);
    ask()
        .contentType("application/json")
        .body("{\"quantity\":\"1 kg\",\"unit\":\"g\"}")
        .post("/v1/calculations/conversion")
        .then()
        .statusCode(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/docs", "/docs/start.js", "/docs/swagger-ui.css"})
  void the_page_needs_no_other_address(String file) {
    var text = served.ask().get(file).then().statusCode(200).extract().body().asString();
    assertThat(OUTSIDE.matcher(text.toLowerCase(Locale.ROOT)).find()).isFalse();
  }

  @Test
  void the_page_shows_the_description_with_a_library_from_here() {
    served
        .ask()
        .get("/docs")
        .then()
        .header("Content-Security-Policy", containsString("default-src 'self'"));
    served.ask().get("/docs/start.js").then().body(containsString("/openapi.json"));
    served
        .ask()
        .get("/docs/swagger-ui-bundle.js")
        .then()
        .statusCode(200)
        .contentType("text/javascript")
        .body(not(containsString("not in the jar")));
  }
}
