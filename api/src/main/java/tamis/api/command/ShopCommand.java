package tamis.api.command;

import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tamis.api.plugin.Plugins;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;

/** A command that works with a shop's documents and the plugins, and writes into files. */
abstract class ShopCommand implements Callable<Integer> {
  private static final int DONE = 0;
  private static final int REJECTED = 1;

  private final Map<String, String> environment;

  @Spec private CommandSpec spec;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Directory of the shop's documents (none: only what is built in)")
  private @Nullable String data;

  @Option(names = "--demo", description = "Work with the demo data")
  private boolean demo;

  @Option(names = "--plugins", paramLabel = "DIR", description = "Directory of plugin jars")
  private @Nullable String pluginJars;

  ShopCommand(Map<String, String> environment) {
    this.environment = environment;
  }

  final Settings settings() {
    var options = new EnumMap<Setting, String>(Setting.class);
    if (data != null) {
      options.put(Setting.DATA, data);
    }
    if (pluginJars != null) {
      options.put(Setting.PLUGINS, pluginJars);
    }
    return new Settings(options, environment);
  }

  final Store store(Settings settings, Plugins plugins) {
    if (demo && data != null) {
      throw new WrongUse("--data and --demo exclude each other");
    }
    if (demo) {
      return Shelves.demo(plugins);
    }
    return data != null || settings.isStoreNamed()
        ? Shelves.named(settings)
        : new MemoryStore(Clock.systemUTC());
  }

  /**
   * Says how it ended.
   *
   * @param troubles what was not done
   * @param done what was, which may be nothing to speak of
   * @return the exit code
   */
  final int told(List<String> troubles, List<String> done) {
    var lines = new ArrayList<>(troubles);
    lines.addAll(done);
    Said.lines(spec, lines);
    return troubles.isEmpty() ? DONE : REJECTED;
  }
}
