package tamis.api.command;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.jar.JarEntry;
import org.jspecify.annotations.Nullable;

/** The files of the demo that lie in the program's jar, or beside its classes while it is built. */
final class DemoFiles {
  private static final String ROOT = "tamis/demo/";

  /** A file that tells where the others lie. */
  private static final String ONE_OF_THEM = "prices.csv";

  private DemoFiles() {}

  /** Names of the files of a folder, in order. */
  static List<String> in(String folder) {
    try {
      var one = Objects.requireNonNull(DemoFiles.class.getResource("/" + ROOT + ONE_OF_THEM));
      if (one.openConnection() instanceof JarURLConnection inJar) {
        inJar.setUseCaches(false);
        return inJar(inJar, ROOT + folder + "/");
      }
      return inDirectory(Path.of(one.toURI()).resolveSibling(folder));
    } catch (URISyntaxException | IOException unreadable) {
      throw new IllegalStateException("the demo data cannot be found", unreadable);
    }
  }

  private static List<String> inDirectory(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }

  private static List<String> inJar(JarURLConnection one, String folder) throws IOException {
    try (var jar = one.getJarFile()) {
      return jar.stream()
          .map(JarEntry::getName)
          .filter(name -> name.startsWith(folder) && !name.endsWith("/"))
          .map(name -> name.substring(folder.length()))
          .sorted()
          .toList();
    }
  }

  static byte[] bytes(String file) {
    try (@Nullable InputStream stream = DemoFiles.class.getResourceAsStream("/" + ROOT + file)) {
      return Objects.requireNonNull(stream, file).readAllBytes();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
