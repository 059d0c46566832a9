package tamis.api.store;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own, serving, so that it can be killed. */
final class ServeProcess implements AutoCloseable {
  private static final String SERVING = "Tamis is serving at ";

  private final Process process;
  private final String address;

  private ServeProcess(Process process, String address) {
    this.process = process;
    this.address = address;
  }

  /** A server that serves by now. */
  static ServeProcess start(Path directory, Map<String, String> environment, String... before) {
    var command = new ArrayList<>(List.of(before));
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            "tamis.api.Main",
            "serve",
            "--port",
            "0"));
    if (!environment.containsKey("TAMIS_DB")) {
      command.addAll(List.of("--data", directory.toString()));
    }
    try {
      var builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
      builder.environment().put("TAMIS_LOG", "off");
      builder.environment().putAll(environment);
      var process = builder.start();
      var out =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      String line = out.readLine();
      if (line == null || !line.startsWith(SERVING)) {
        throw new IllegalStateException("the server said: " + line);
      }
      return new ServeProcess(process, line.substring(SERVING.length()));
    } catch (IOException failed) {
      throw new IllegalStateException(failed);
    }
  }

  String address() {
    return address;
  }

  /** {@code kill -9}, and waits until it is gone. */
  void kill() {
    process.descendants().forEach(ProcessHandle::destroyForcibly);
    process.destroyForcibly();
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        throw new IllegalStateException("the server does not end");
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    kill();
  }
}
