package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import org.eclipse.jetty.http.HttpField;
import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.version.Versions;

/** The description of the API, for programs and as a page; the page needs no other address. */
final class DocsHandler {
  private static final String WEBJAR = "/META-INF/resources/webjars/swagger-ui/";
  private static final String OWN = "/tamis/api/http/docs/";

  /** The page takes all it shows from here; its library writes styles into elements. */
  private static final HttpField POLICY =
      new HttpField(
          "Content-Security-Policy",
          "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:");

  private final Plugins plugins;
  private final Versions versions;
  private volatile @Nullable Reply description;

  DocsHandler(Plugins plugins, Versions versions) {
    this.plugins = plugins;
    this.versions = versions;
  }

  void register(Routes routes) {
    routes.get("/openapi.json", this::description);
    routes.get("/docs", this::page);
    routes.get("/docs/start.js", call -> file("text/javascript; charset=utf-8", OWN + "start.js"));
    routes.get(
        "/docs/swagger-ui.css",
        call -> file("text/css; charset=utf-8", webjar() + "swagger-ui.css"));
    routes.get(
        "/docs/swagger-ui-bundle.js",
        call -> file("text/javascript; charset=utf-8", webjar() + "swagger-ui-bundle.js"));
  }

  /** Plugins do not change while the program runs, so it is written once. */
  @OpenApi(
      path = "/openapi.json",
      methods = HttpMethod.GET,
      tags = "docs",
      operationId = "getDescription",
      summary = "This description",
      description = "OpenAPI 3.0.3, calculations of plugins among the rest.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(mimeType = "application/json", type = "object")))
  Reply description(Context call) {
    var known = description;
    if (known == null) {
      known =
          Reply.json(
              tamis.api.representation.OpenApi.bytes(
                  plugins.offered(), Documented.RECORDS, versions.program()));
      description = known;
    }
    return known;
  }

  @OpenApi(
      path = "/docs",
      methods = HttpMethod.GET,
      tags = "docs",
      operationId = "getDocs",
      summary = "This description as a page",
      description = "Requests can be tried there; it needs no other address.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(from = String.class, mimeType = "text/html")))
  Reply page(Context call) throws IOException {
    return file("text/html; charset=utf-8", OWN + "index.html").with(POLICY);
  }

  private static Reply file(String type, String resource) throws IOException {
    try (@Nullable InputStream file = DocsHandler.class.getResourceAsStream(resource)) {
      if (file == null) {
        throw new IllegalStateException(resource + " is not in the jar");
      }
      return Reply.of(200, type, file.readAllBytes());
    }
  }

  /** The folder of the page's library, which carries its version in its name. */
  private static String webjar() throws IOException {
    var told = new Properties();
    var name = "/META-INF/maven/org.webjars/swagger-ui/pom.properties";
    try (@Nullable InputStream file = DocsHandler.class.getResourceAsStream(name)) {
      if (file == null) {
        throw new IllegalStateException(name + " is not in the jar");
      }
      told.load(file);
    }
    return WEBJAR + told.getProperty("version") + "/";
  }
}
