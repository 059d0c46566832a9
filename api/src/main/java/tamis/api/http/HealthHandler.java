package tamis.api.http;

import io.javalin.http.Context;
import java.util.Map;
import tamis.api.http.Readiness.PluginState;
import tamis.api.http.Readiness.Refused;
import tamis.api.plugin.LoadedPlugin;
import tamis.api.plugin.Plugins;
import tamis.api.representation.ResultJson;
import tamis.api.store.Store;
import tamis.api.version.Versions;

/** Tells whether the program runs and what it serves with. */
final class HealthHandler {
  private final Reply live = Reply.json(ResultJson.bytes(Map.of("status", "live")));
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

  Reply live(Context call) {
    return live;
  }

  Reply ready(Context call) {
    var loaded = plugins.loaded().stream().map(HealthHandler::state).toList();
    var refused = plugins.refused().stream().map(one -> new Refused(one.jar(), one.why())).toList();
    return Reply.json(
        ResultJson.bytes(new Readiness("ready", versions, store.revision(), loaded, refused)));
  }

  private static PluginState state(LoadedPlugin plugin) {
    return new PluginState(
        plugin.name(),
        plugin.origin(),
        plugin.calculations().stream().map(one -> one.name()).toList(),
        plugin.guard().isOff());
  }
}
