package tamis.api.command;

import io.javalin.Javalin;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From the start of the program to its first answer, against a bare Javalin; with and without an
 * archive of its classes. Not run by itself, and it needs the jar: {@code mvn -q -DskipTests
 * package}, then {@code mvn -q -pl api -am test -Dtest=StartBenchmark
 * -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class StartBenchmark {
  private static final int ROUNDS = 9;
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin", "java").toString();
  private static final String ASKED =
      "/v1/calculations/conversion?quantity=2+cup&ingredient=bread-flour&unit=g&format=text&pick=/amount";

  @TempDir Path directory;

  /** The peer: one answer to anything. */
  static final class Bare {
    private Bare() {}

    public static void main(String[] arguments) {
      var bare = Javalin.create(config -> config.showJavalinBanner = false);
      bare.get("/<any>", call -> call.result("274"));
      bare.start("127.0.0.1", 0);
      System.out.println("serving at http://127.0.0.1:" + bare.port());
    }
  }

  @Test
  void from_start_to_first_answer() throws Exception {
    Path jar = Path.of("target/tamis.jar").toAbsolutePath();
    if (!Files.exists(jar)) {
      throw new IllegalStateException("build the jar first: mvn -q -DskipTests package");
    }
    var archive = directory.resolve("tamis.jsa");
    var serve = List.of("-jar", jar.toString(), "serve", "--port", "0", "--data", data());
    stopped(command(List.of("-XX:ArchiveClassesAtExit=" + archive), serve));
    Map<String, List<String>> commands = new LinkedHashMap<>();
    commands.put(
        "bare Javalin",
        command(List.of("-cp", System.getProperty("java.class.path"), Bare.class.getName())));
    commands.put("Tamis", command(serve));
    commands.put(
        "Tamis with an archive", command(List.of("-XX:SharedArchiveFile=" + archive), serve));
    Map<String, double[]> seconds = new LinkedHashMap<>();
    commands.keySet().forEach(name -> seconds.put(name, new double[ROUNDS]));
    for (int round = 0; round < ROUNDS; round++) { // by turns, so that a busy moment falls on all
      for (var one : commands.entrySet()) {
        seconds.get(one.getKey())[round] = stopped(one.getValue());
      }
    }
    seconds.values().forEach(Arrays::sort);
    double bare = seconds.get("bare Javalin")[ROUNDS / 2];
    seconds.forEach(
        (name, all) ->
            System.out.printf(
                Locale.ROOT,
                "%s: %.2f s to the first answer (%.2f to %.2f), %.2f ×%n",
                name,
                all[ROUNDS / 2],
                all[0],
                all[ROUNDS - 1],
                all[ROUNDS / 2] / bare));
  }

  private String data() {
    return directory.resolve("data").toString();
  }

  @SafeVarargs
  private static List<String> command(List<String>... parts) {
    var command = new ArrayList<>(List.of(JAVA));
    for (var part : parts) {
      command.addAll(part);
    }
    return command;
  }

  /** Starts it, asks once, stops it; the seconds until the answer was there. */
  private static double stopped(List<String> command) throws Exception {
    long start = System.nanoTime();
    var process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    try (var out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      String line = out.readLine();
      var address = URI.create(line.substring(line.indexOf("http://")) + ASKED);
      var answer =
          HttpClient.newHttpClient()
              .send(HttpRequest.newBuilder(address).build(), BodyHandlers.ofString());
      double seconds = (System.nanoTime() - start) / 1e9;
      if (answer.statusCode() != 200) {
        throw new IllegalStateException(answer.body());
      }
      return seconds;
    } finally {
      process.destroy();
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    }
  }
}
