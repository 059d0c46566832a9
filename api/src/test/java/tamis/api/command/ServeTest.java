package tamis.api.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.plugin.PluginJar;

/** The program as an operator starts and stops it: a process of its own. */
class ServeTest {
  private static final String SERVING = "Tamis is serving at ";

  @TempDir private Path directory;

  private Process start(Map<String, String> environment, String... arguments) throws IOException {
    var temporary = Files.createDirectories(directory.resolve("temporary"));
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-Djava.io.tmpdir=" + temporary);
    command.add("-cp");
    command.add(System.getProperty("java.class.path"));
    command.add("tamis.api.Main");
    command.addAll(List.of("serve", "--data", directory.resolve("data").toString()));
    command.addAll(List.of(arguments));
    var builder = new ProcessBuilder(command).redirectError(directory.resolve("err").toFile());
    builder.environment().putAll(environment);
    return builder.start();
  }

  private String err() throws IOException {
    return Files.readString(directory.resolve("err"));
  }

  private static BufferedReader out(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  private static String get(String address) throws Exception {
    var request = HttpRequest.newBuilder(URI.create(address)).build();
    return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
  }

  @Test
  void it_serves_the_demo_until_it_is_told_to_stop() throws Exception {
    var process = start(Map.of(), "--port", "0", "--demo");
    try (var out = out(process)) {
      var line = out.readLine();
      assertThat(line).startsWith(SERVING + "http://127.0.0.1:");
      var address = line.substring(SERVING.length());
      assertThat(get(address + "/health/live")).contains("live");
      assertThat(get(address + "/v1/formulas?limit=1000")).contains("\"brioche\"");
      assertThat(get(address + "/v1/prices?format=csv"))
          .contains("all-purpose-flour,25 kg,18.50 EUR,100,Sedgefoot Weir mill");
      assertThat(get(address + "/v1/trials?limit=100")).contains("\"t1\"").contains("\"t8\"");
      assertThat(get(address + "/v1/ingredients?q=house")).contains("house-hazelnut-praline");
      assertThat(
              get(
                  address
                      + "/v1/calculations/scaling?formula=brioche&to.factor=1&format=text&pick=/grams"))
          .matches("[0-9.]+");
      for (int i = 0; i < 300 && !err().contains("\"calculation\":\"scaling\""); i++) {
        Thread.sleep(100);
      }
      process.toHandle().destroy();
      assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isEqualTo(128 + 15);
      assertThat(out.readLine()).as("stdout carries the serving line only").isNull();
    } finally {
      process.destroyForcibly();
    }
    assertThat(err())
        .as("worked requests with their answers")
        .contains("/v1/calculations/conversion?quantity=350")
        .contains("→ 176.6")
        .contains("\"calculation\":\"scaling\"")
        .doesNotContain("no answer");
    assertThat(err().lines())
        .anyMatch(told -> told.matches("\\d+ GET /health/live 200 [0-9.]+ ms"));
  }

  @Test
  void it_leaves_nothing_behind_when_it_is_stopped() throws Exception {
    PluginJar.of("dropped", "weighing").in(directory, "weighing.jar");
    for (int start = 0; start < 2; start++) {
      var process = start(Map.of(), "--port", "0", "--plugins", directory.toString());
      try (var out = out(process)) {
        var address = out.readLine().substring(SERVING.length());
        assertThat(get(address + "/v1/calculations/weighing?grams=5&format=text")).isEqualTo("5");
        assertThat(copies()).isNotEmpty();
        process.toHandle().destroy();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
      } finally {
        process.destroyForcibly();
      }
      assertThat(copies()).as("copies of plugins").isEmpty();
    }
  }

  private List<Path> copies() throws IOException {
    try (var files = Files.list(directory.resolve("temporary"))) {
      return files.filter(file -> file.toString().contains("tamis-plugins")).toList();
    }
  }

  @Test
  void a_quiet_log_tells_no_requests() throws Exception {
    var process = start(Map.of("TAMIS_LOG", "off", "TAMIS_PORT", "0"));
    try (var out = out(process)) {
      var address = out.readLine().substring(SERVING.length());
      get(address + "/health/live");
    } finally {
      process.destroy();
      process.waitFor();
    }
    assertThat(err()).isEmpty();
  }

  @Test
  void a_port_that_is_taken_is_one_line_and_exit_2() throws Exception {
    try (var taken = new ServerSocket(0)) {
      var process =
          start(Map.of(), "--port", Integer.toString(taken.getLocalPort()), "--host", "0.0.0.0");
      assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
      assertThat(process.exitValue()).isEqualTo(2);
      assertThat(err().lines())
          .singleElement()
          .asString()
          .contains("cannot serve at 0.0.0.0:" + taken.getLocalPort());
      assertThat(out(process).readLine()).isNull();
    }
  }

  @Test
  void calculations_of_one_name_are_one_line_and_exit_2() throws Exception {
    PluginJar.of("one", "conversion").in(directory, "clash.jar");
    var process = start(Map.of(), "--port", "0", "--plugins", directory.toString());
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    assertThat(process.exitValue()).isEqualTo(2);
    assertThat(err().lines())
        .singleElement()
        .asString()
        .contains("calculation `conversion`")
        .contains("clash.jar");
  }
}
