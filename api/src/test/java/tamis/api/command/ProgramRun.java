package tamis.api.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/**
 * The program in a process of its own, from its start to its end.
 *
 * @param exit its exit code
 * @param out what it said on stdout
 * @param err what it said on stderr
 */
record ProgramRun(int exit, String out, String err) {
  private static final int MOST_SECONDS = 90;

  static ProgramRun of(Map<String, String> environment, String... arguments) {
    var command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "tamis.api.Main"));
    command.addAll(List.of(arguments));
    try {
      Path out = Files.createTempFile("tamis", ".out");
      Path err = Files.createTempFile("tamis", ".err");
      var builder =
          new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
      builder.environment().putAll(environment);
      var process = builder.start();
      if (!process.waitFor(MOST_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new IllegalStateException("it does not end: " + Files.readString(err));
      }
      var run = new ProgramRun(process.exitValue(), text(out), text(err));
      Files.delete(out);
      Files.delete(err);
      return run;
    } catch (IOException failed) {
      throw new IllegalStateException(failed);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(stopped);
    }
  }

  private static String text(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.UTF_8);
  }
}
