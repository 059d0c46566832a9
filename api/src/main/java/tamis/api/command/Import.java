package tamis.api.command;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tamis.api.store.Load;

/** Fills an empty store from what {@code export} wrote. */
@Command(
    name = "import",
    description = "Fills an empty store from an export; no server may be running on it.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Import extends StoreCommand {
  @Parameters(paramLabel = "FILE", description = "What `export` wrote")
  private String file = "";

  public Import(Map<String, String> environment) {
    super(environment);
  }

  @Override
  void run(Settings settings) throws IOException {
    if (!Files.isRegularFile(path(file))) {
      throw new WrongUse(file + " is no file");
    }
    try (var held = HeldStore.open(settings);
        var in = new BufferedInputStream(Files.newInputStream(path(file)))) {
      Load.into(held.store(), in, false);
    }
    tell("imported " + file);
  }
}
