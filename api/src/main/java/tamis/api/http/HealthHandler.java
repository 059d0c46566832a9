package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiResponse;
import tamis.api.http.Readiness.PluginState;
import tamis.api.http.Readiness.Refused;
import tamis.api.plugin.LoadedPlugin;
import tamis.api.plugin.Plugins;
import tamis.api.representation.ResultJson;
import tamis.api.store.Store;
import tamis.api.version.Versions;

/** Tells whether the program runs and what it serves with. */
final class HealthHandler {
  private final Reply live = Reply.json(ResultJson.bytes(new Liveness("live")));
  private final Plugins plugins;
  private final Store store;
  private final Versions versions;

  HealthHandler(Plugins plugins, Store store, Versions versions) {
    this.plugins = plugins;
    this.store = store;
    this.versions = versions;
  }

  void register(Routes routes) {
    routes.get("/health/live", this::live);
    routes.get("/health/ready", this::ready);
  }

  @OpenApi(
      path = "/health/live",
      methods = HttpMethod.GET,
      tags = "health",
      operationId = "isLive",
      summary = "Tells that the program runs",
      description = "Asks nothing of the store.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(from = Liveness.class)))
  Reply live(Context call) {
    return live;
  }

  @OpenApi(
      path = "/health/ready",
      methods = HttpMethod.GET,
      tags = "health",
      operationId = "isReady",
      summary = "Tells what is served with",
      description = "Versions, plugins, jars that were not loaded, and whether the store answers.",
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = @OpenApiContent(from = Readiness.class)),
        @OpenApiResponse(
            status = "503",
            description = "The store does not answer; `status` says so",
            content = @OpenApiContent(from = Readiness.class))
      })
  Reply ready(Context call) {
    var loaded = plugins.loaded().stream().map(HealthHandler::state).toList();
    var refused = plugins.refused().stream().map(one -> new Refused(one.jar(), one.why())).toList();
    boolean answers = store.answers();
    String status = answers ? "ready" : "store-unavailable";
    byte[] body =
        ResultJson.bytes(new Readiness(status, versions, store.revision(), loaded, refused));
    return Reply.of(answers ? 200 : 503, Reply.JSON, body);
  }

  private static PluginState state(LoadedPlugin plugin) {
    return new PluginState(
        plugin.name(),
        plugin.origin(),
        plugin.calculations().stream().map(one -> one.name()).toList(),
        plugin.guard().isOff());
  }
}
