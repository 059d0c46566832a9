package tamis.api.plugin;

import java.net.URL;
import java.net.URLClassLoader;

/**
 * Loads one dropped-in plugin. What it sees besides its own jar is the JDK, the engine and the
 * annotations of nullness: never another plugin, never a library of the program.
 */
final class PluginClassLoader extends URLClassLoader {
  static {
    registerAsParallelCapable();
  }

  PluginClassLoader(String jar, URL copy) {
    super(jar, new URL[] {copy}, new Window(PluginClassLoader.class.getClassLoader()));
  }

  /** The JDK, with a view of the engine; resources are those of the JDK alone. */
  private static final class Window extends ClassLoader {
    static {
      registerAsParallelCapable();
    }

    private final ClassLoader host;

    Window(ClassLoader host) {
      super(getPlatformClassLoader());
      this.host = host;
    }

    @Override
    protected Class<?> findClass(String name) throws ClassNotFoundException {
      if (name.startsWith("tamis.engine.") || name.startsWith("org.jspecify.annotations.")) {
        return host.loadClass(name);
      }
      throw new ClassNotFoundException(name);
    }
  }
}
