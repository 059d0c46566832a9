package tamis.api.command;

import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tamis.api.store.Backup;

/** Writes a backup; a server may be running. */
@Command(
    name = "backup",
    description = "Writes a backup of the store; a server may go on running.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Backups extends StoreCommand {
  @Parameters(paramLabel = "FILE", description = "File to write; it must not be there yet")
  private String file = "";

  public Backups(Map<String, String> environment) {
    super(environment);
  }

  @Override
  void run(Settings settings) {
    try (var held = HeldStore.beside(settings)) {
      Backup.write(held.store(), path(file));
    }
    tell("wrote " + file);
  }
}
