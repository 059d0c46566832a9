package tamis.api.version;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Properties;
import tamis.engine.record.Described;

/** What changes each on its own: program, plugin contract, built-in tables, store schema. */
public record Versions(
    @Described(value = "The program", example = "0.1.0") String program,
    @Described(value = "The contract that plugins are built against", example = "1") int spi,
    @Described(value = "The built-in tables", example = "1") int tables,
    @Described(value = "The schema of the store", example = "1") int store) {

  /** Those of this build. */
  public static Versions ofThisBuild() {
    var told = new Properties();
    try (var file = Versions.class.getResourceAsStream("/tamis/api/version.properties")) {
      told.load(Objects.requireNonNull(file, "version.properties"));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
    return new Versions(
        told.getProperty("program"),
        number(told, "spi"),
        number(told, "tables"),
        number(told, "store"));
  }

  private static int number(Properties told, String name) {
    return Integer.parseInt(told.getProperty(name));
  }
}
