package tamis.api.command;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tamis.api.store.Dump;

/** Writes all that the store holds as NDJSON. */
@Command(
    name = "export",
    description = "Writes all revisions of all documents as NDJSON.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Export extends StoreCommand {
  @Option(names = "--out", paramLabel = "FILE", description = "File to write (standard output)")
  private @Nullable String file;

  public Export(Map<String, String> environment) {
    super(environment);
  }

  @Override
  void run(Settings settings) {
    try (var held = HeldStore.beside(settings);
        OutputStream out = new BufferedOutputStream(target())) {
      Dump.write(held.store(), out);
    } catch (IOException | UncheckedIOException unwritable) {
      throw new WrongUse(
          (file == null ? "standard output" : file)
              + " cannot be written to the end; the export is not whole");
    }
  }

  private OutputStream target() throws IOException {
    return file == null
        ? new FileOutputStream(FileDescriptor.out)
        : Files.newOutputStream(path(file));
  }
}
