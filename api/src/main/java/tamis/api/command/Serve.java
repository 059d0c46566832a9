package tamis.api.command;

import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tamis.api.http.Server;
import tamis.api.http.ServerSettings;
import tamis.api.plugin.ClashingPlugins;
import tamis.api.plugin.PluginLoader;
import tamis.api.plugin.Plugins;
import tamis.api.store.Store;
import tamis.api.version.Versions;

/** Serves until it is stopped. */
@Command(
    name = "serve",
    description = "Serves the API until it is stopped.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Serve implements Callable<Integer> {
  private static final int SECONDS_TO_CLOSE = 10;

  private final Map<String, String> environment;

  @Spec private CommandSpec spec;

  @Option(names = "--host", paramLabel = "HOST", description = "Address to serve at (127.0.0.1)")
  private @Nullable String host;

  @Option(names = "--port", paramLabel = "PORT", description = "Port; 0 takes a free one (7070)")
  private @Nullable String port;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Directory of the shop's documents (tamis-data)")
  private @Nullable String data;

  @Option(names = "--demo", description = "Load the demo data into an empty store")
  private boolean demo;

  @Option(names = "--plugins", paramLabel = "DIR", description = "Directory of plugin jars")
  private @Nullable String plugins;

  public Serve(Map<String, String> environment) {
    this.environment = environment;
  }

  @Override
  public Integer call() {
    var settings = new Settings(options(), environment);
    var told = settings.server();
    var closed = new CountDownLatch(1);
    try (var plugins = plugins(settings);
        var held = HeldStore.open(settings);
        var server = open(told, filled(settings, held.store(), plugins), plugins)) {
      Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server, closed), "stop"));
      var out = spec.commandLine().getOut();
      out.println("Tamis is serving at " + server.address());
      out.flush();
      if (settings.isDemo()) {
        Demo.show(server.address(), spec.commandLine().getErr());
      }
      server.join();
    } finally {
      closed.countDown();
    }
    return 0;
  }

  /** The program ends with this: so it waits until store and plugins are closed, too. */
  private static void stop(Server server, CountDownLatch closed) {
    server.close();
    try {
      closed.await(SECONDS_TO_CLOSE, TimeUnit.SECONDS);
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }

  /** Our plugins and those of the directory that is named. */
  static Plugins plugins(Settings settings) {
    try {
      return PluginLoader.load(
          Serve.class.getClassLoader(),
          settings.plugins(),
          Versions.ofThisBuild(),
          settings.calculationTime());
    } catch (ClashingPlugins clash) {
      throw new WrongUse(String.valueOf(clash.getMessage()));
    }
  }

  private static Store filled(Settings settings, Store store, Plugins plugins) {
    if (settings.isDemo()) {
      new Demo(store, plugins).load();
    }
    return store;
  }

  private static Server open(ServerSettings settings, Store store, Plugins plugins) {
    try {
      return Server.start(settings, store, plugins, Versions.ofThisBuild());
    } catch (Server.AddressTaken taken) {
      throw new WrongUse(String.valueOf(taken.getMessage()));
    }
  }

  private Map<Setting, String> options() {
    var options = new EnumMap<Setting, String>(Setting.class);
    put(options, Setting.HOST, host);
    put(options, Setting.PORT, port);
    put(options, Setting.DATA, data);
    put(options, Setting.DEMO, demo ? "on" : null);
    put(options, Setting.PLUGINS, plugins);
    return options;
  }

  private static void put(Map<Setting, String> options, Setting setting, @Nullable String given) {
    if (given != null) {
      options.put(setting, given);
    }
  }
}
