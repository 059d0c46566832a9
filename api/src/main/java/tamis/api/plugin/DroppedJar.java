package tamis.api.plugin;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.ServiceConfigurationError;
import java.util.ServiceLoader;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;

/** One jar of the plugin directory, as a copy that nobody overwrites while it is in use. */
final class DroppedJar implements AutoCloseable {
  private static final String SPI_VERSION = "Tamis-Spi-Version";
  private static final String STARTLESS = "its start failed or did not end; ask who made it";

  private final String file;
  private final Path copy;
  private final String hash;
  private final Duration limit;
  private @Nullable PluginClassLoader loader;
  private final List<WatchedGuard> guards = new ArrayList<>();

  DroppedJar(Path jar, Path copies, Duration limit) {
    this.file = jar.getFileName().toString();
    this.copy = copies.resolve(file);
    this.limit = limit;
    try {
      Files.copy(jar, copy);
      this.hash = hash(Files.readAllBytes(copy));
    } catch (IOException unreadable) {
      throw new UnusablePlugin("cannot be read; see who may read it");
    }
  }

  private static String hash(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every JDK has SHA-256", impossible);
    }
  }

  /**
   * The plugins in it.
   *
   * @throws UnusablePlugin if it cannot be used
   */
  List<LoadedPlugin> load(int spi) {
    refuseOtherContract(spi);
    try {
      loader = new PluginClassLoader(file, copy.toUri().toURL());
      var here = loader;
      // What a plugin does while it is made may fail or hang as any call of it may.
      try (var making = new WatchedGuard(file, here, limit)) {
        return making.run("its start", () -> attempt(here)).plugins();
      }
    } catch (Refusal broken) {
      throw new UnusablePlugin(STARTLESS, broken);
    } catch (IOException unreadable) {
      throw new UnusablePlugin("cannot be read; build it again");
    }
  }

  /** What a start came to; what is wrong with a jar is told as it is, not as a call that failed. */
  private record Attempt(List<LoadedPlugin> loaded, @Nullable UnusablePlugin refused) {
    List<LoadedPlugin> plugins() {
      if (refused != null) {
        throw refused;
      }
      return loaded;
    }
  }

  private Attempt attempt(PluginClassLoader here) {
    try {
      return new Attempt(plugins(here), null);
    } catch (UnusablePlugin refused) {
      return new Attempt(List.of(), refused);
    }
  }

  private List<LoadedPlugin> plugins(PluginClassLoader here) {
    var plugins = new ArrayList<LoadedPlugin>();
    try {
      for (var plugin : ServiceLoader.load(Plugin.class, here)) {
        if (plugin.getClass().getClassLoader() == here) {
          plugins.add(known(plugin, here));
        }
      }
    } catch (ServiceConfigurationError broken) {
      boolean threw = broken.getCause() instanceof RuntimeException;
      throw new UnusablePlugin(
          threw ? STARTLESS : "a class that it names cannot be loaded; build it again", broken);
    } catch (LinkageError broken) {
      throw new UnusablePlugin("a class that it names cannot be loaded; build it again", broken);
    }
    if (plugins.isEmpty()) {
      throw new UnusablePlugin("holds no plugin; its services file must name one");
    }
    return plugins;
  }

  private LoadedPlugin known(Plugin plugin, PluginClassLoader here) {
    Inspection.name("plugin", plugin.name());
    var calculations = new ArrayList<Calculation<?, ?>>();
    for (var calculation : plugin.calculations()) {
      var known = KnownCalculation.of(calculation);
      Inspection.of(known);
      calculations.add(known);
    }
    var guard = new WatchedGuard(plugin.name(), here, limit);
    guards.add(guard);
    var tables = List.copyOf(plugin.tables());
    return new LoadedPlugin(plugin.name(), file, hash, calculations, () -> tables, guard);
  }

  private void refuseOtherContract(int spi) {
    @Nullable Manifest manifest;
    try (var jar = new JarFile(copy.toFile())) {
      manifest = jar.getManifest();
    } catch (IOException noJar) {
      throw new UnusablePlugin("is no jar; remove it or build it again");
    }
    @Nullable String told =
        manifest == null ? null : manifest.getMainAttributes().getValue(SPI_VERSION);
    if (told == null || !told.strip().matches("[1-9][0-9]{0,8}")) {
      throw new UnusablePlugin(
          "does not say which contract it was built against; its manifest needs the line "
              + SPI_VERSION
              + ": "
              + spi);
    }
    if (Integer.parseInt(told.strip()) > spi) {
      throw new UnusablePlugin(
          "was built against contract "
              + told.strip()
              + " and this program has "
              + spi
              + "; take a newer program or an older plugin");
    }
  }

  @Override
  public void close() {
    guards.forEach(WatchedGuard::close);
    try {
      if (loader != null) {
        loader.close();
      }
      Files.deleteIfExists(copy);
    } catch (IOException stays) {
      copy.toFile().deleteOnExit();
    }
  }
}
