package tamis.api;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Properties;
import picocli.CommandLine.IVersionProvider;

/** What {@code --version} prints: each version that changes on its own. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    var versions = read();
    return new String[] {
      "program " + versions.getProperty("program"), "spi " + versions.getProperty("spi")
    };
  }

  private static Properties read() {
    var versions = new Properties();
    try (var file = Version.class.getResourceAsStream("version.properties")) {
      versions.load(Objects.requireNonNull(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return versions;
  }
}
