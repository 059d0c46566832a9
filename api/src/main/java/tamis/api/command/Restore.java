package tamis.api.command;

import java.nio.file.Files;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tamis.api.store.Backup;
import tamis.api.store.DataDirectory;

/** Puts a backup in the place of the store. */
@Command(
    name = "restore",
    description = "Puts a backup in the place of the store; no server may be running on it.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Restore extends StoreCommand {
  @Parameters(paramLabel = "FILE", description = "A backup, or an export")
  private String file = "";

  @Option(names = "--replace", description = "Replace the documents that are there")
  private boolean replace;

  public Restore(Map<String, String> environment) {
    super(environment);
  }

  @Override
  void run(Settings settings) {
    var backup = path(file);
    if (!Files.isRegularFile(backup)) {
      throw new WrongUse(file + " is no file");
    }
    if (settings.database() == null) {
      try (var directory = DataDirectory.hold(settings.data())) {
        Backup.restore(backup, directory, replace);
      }
    } else {
      try (var held = HeldStore.open(settings)) {
        Backup.restore(backup, held.store(), replace);
      }
    }
    tell("restored " + file);
  }
}
