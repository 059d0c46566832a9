package tamis.api.plugin;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.api.version.Versions;
import tamis.engine.kitchen.Pantry;
import tamis.engine.spi.Plugin;

/** Finds plugins: ours on the class path, others as jars in a directory. */
public final class PluginLoader {
  private static final Logger LOG = LoggerFactory.getLogger(PluginLoader.class);

  private final Versions versions;
  private final Duration limit;
  private final List<LoadedPlugin> loaded = new ArrayList<>();
  private final List<RefusedJar> refused = new ArrayList<>();
  private final List<AutoCloseable> open = new ArrayList<>();
  private final Set<String> names = new HashSet<>();
  private final Map<String, LoadedPlugin> offering = new HashMap<>();

  private PluginLoader(Versions versions, Duration limit) {
    this.versions = versions;
    this.limit = limit;
  }

  /**
   * All plugins that can be used.
   *
   * @param ours the class path of the program
   * @param directory whose jars are loaded too, or null
   * @param versions of this program, the contract that it offers among them
   * @param limit how long a call of a dropped-in plugin may take
   * @throws ClashingPlugins if two offer a calculation of one name
   */
  public static Plugins load(
      ClassLoader ours, @Nullable Path directory, Versions versions, Duration limit) {
    var loader = new PluginLoader(versions, limit);
    for (var plugin : ServiceLoader.load(Plugin.class, ours)) {
      loader.take(loader.builtIn(plugin));
    }
    if (directory != null) {
      loader.dropped(directory);
    }
    return new Plugins(loader.loaded, loader.refused, loader.open);
  }

  private LoadedPlugin builtIn(Plugin plugin) {
    return new LoadedPlugin(
        plugin.name(),
        LoadedPlugin.BUILT_IN,
        versions.program() + "/" + versions.tables(),
        plugin.calculations(),
        plugin::tables,
        new DirectGuard(plugin.name()));
  }

  private void dropped(Path directory) {
    try (var files = Files.list(directory)) {
      var copies = Files.createTempDirectory("tamis-plugins");
      open.add(() -> Files.deleteIfExists(copies));
      files
          .filter(file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".jar"))
          .sorted()
          .forEach(jar -> dropped(jar, copies));
    } catch (IOException unreadable) {
      throw new UncheckedIOException("the directory of plugins cannot be read", unreadable);
    }
  }

  private void dropped(Path file, Path copies) {
    try {
      var jar = new DroppedJar(file, copies, limit);
      open.add(0, jar);
      var plugins = jar.load(versions.spi());
      plugins.forEach(this::refuseIfTaken);
      plugins.forEach(this::take);
    } catch (UnusablePlugin unusable) {
      var jar =
          new RefusedJar(String.valueOf(file.getFileName()), String.valueOf(unusable.getMessage()));
      refused.add(jar);
      LOG.error("plugin {} is not loaded: {}", jar.jar(), jar.why(), unusable.getCause());
    }
  }

  private void refuseIfTaken(LoadedPlugin plugin) {
    if (names.contains(plugin.name())) {
      throw new UnusablePlugin("a plugin `" + plugin.name() + "` is loaded already; remove one");
    }
    for (var table : plugin.tables().get()) {
      if (tables().contains(table.name())) {
        throw new UnusablePlugin("its table `" + table.name() + "` is brought by another already");
      }
    }
  }

  private Set<String> tables() {
    var names = new HashSet<String>();
    Pantry.builtInTables().forEach(table -> names.add(table.name()));
    loaded.forEach(plugin -> plugin.tables().get().forEach(table -> names.add(table.name())));
    return names;
  }

  private void take(LoadedPlugin plugin) {
    for (var calculation : plugin.calculations()) {
      var other = offering.put(calculation.name(), plugin);
      if (other != null) {
        throw new ClashingPlugins(
            "calculation `"
                + calculation.name()
                + "` is offered by "
                + told(other)
                + " and by "
                + told(plugin)
                + "; remove one of them");
      }
    }
    names.add(plugin.name());
    loaded.add(plugin);
  }

  private static String told(LoadedPlugin plugin) {
    return "plugin `" + plugin.name() + "` (" + plugin.origin() + ")";
  }
}
