package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import tamis.api.command.Setting;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;

/** What the pages show is what the program does. */
class DocumentationTest {
  @TempDir static Path data;
  private static String address;
  private static Thread server;

  @BeforeAll
  static void serve_the_demo() throws Exception {
    StringWriter out = new StringWriter();
    CommandLine command = Main.commandLine(Map.of());
    command.setOut(new PrintWriter(out));
    command.setErr(new PrintWriter(new StringWriter()));
    String[] arguments = {"serve", "--port", "0", "--demo", "--data", data.toString()};
    server = new Thread(() -> command.execute(arguments), "documentation");
    server.setDaemon(true);
    server.start();
    for (int i = 0; i < 600 && !out.toString().contains("\n"); i++) {
      Thread.sleep(100);
    }
    assertThat(out.toString()).startsWith("Tamis is serving at http://");
    address = out.toString().strip().substring("Tamis is serving at ".length());
  }

  @AfterAll
  static void stop() {
    server.interrupt();
  }

  static Stream<List<Fences.Block>> shown() throws IOException {
    List<List<Fences.Block>> pairs = new ArrayList<>();
    for (String page : List.of("README.md", "DEVELOPERS.md")) {
      List<Fences.Block> blocks = Fences.of(page);
      for (int i = 0; i + 1 < blocks.size(); i++) {
        if (blocks.get(i).language().equals("http")) {
          assertThat(blocks.get(i + 1).language()).as("what follows a request").isEqualTo("json");
          pairs.add(List.of(blocks.get(i), blocks.get(i + 1)));
        }
      }
    }
    assertThat(pairs).hasSizeGreaterThanOrEqualTo(3);
    return pairs.stream();
  }

  @ParameterizedTest
  @MethodSource("shown")
  void a_request_that_is_shown_answers_as_it_is_shown(List<Fences.Block> pair) throws Exception {
    HttpResponse<String> answer = send(pair.get(0).text());
    assertShown(tree(pair.get(1).text()), tree(answer.body()), "");
  }

  @Test
  void the_shell_line_answers_the_number_below_it() throws Exception {
    List<Fences.Block> blocks = Fences.of("README.md");
    for (int i = 0; i < blocks.size(); i++) {
      if (blocks.get(i).text().startsWith("curl '")) {
        String shown = blocks.get(i).text().split("'", -1)[1];
        HttpResponse<String> answer = get(shown.replace("http://127.0.0.1:7070", ""));
        assertThat(answer.body()).isEqualTo(blocks.get(i + 1).text().strip());
        return;
      }
    }
    throw new AssertionError("README.md shows no curl");
  }

  @Test
  void the_program_that_is_shown_is_the_one_that_is_run() throws Exception {
    String source = Files.readString(Path.of("src/test/java/tamis/api/ScalingWithoutHttp.java"));
    String region = source.split("// region scaling\n", -1)[1].split("    // endregion", -1)[0];
    assertThat(Fences.of("README.md"))
        .filteredOn(block -> block.language().equals("java"))
        .singleElement()
        .extracting(Fences.Block::text)
        .isEqualTo(region.stripTrailing().stripIndent() + "\n");
  }

  @Test
  void the_list_of_calculations_is_the_catalogue() throws Exception {
    Map<?, ?> catalogue = (Map<?, ?>) tree(get("/v1/calculations").body());
    List<List<String>> offered = new ArrayList<>();
    for (Object item : (List<?>) catalogue.get("items")) {
      Map<?, ?> calculation = (Map<?, ?>) item;
      offered.add(
          List.of("`" + calculation.get("name") + "`", String.valueOf(calculation.get("title"))));
    }
    assertThat(Fences.table("README.md", "calculation"))
        .containsExactlyInAnyOrderElementsOf(offered);
  }

  @Test
  void the_list_of_settings_is_what_can_be_set() throws Exception {
    List<List<String>> settings =
        Arrays.stream(Setting.values())
            .map(
                s ->
                    List.of(
                        "`" + s.variable() + "`",
                        s.usual().isEmpty() ? "" : "`" + s.usual() + "`",
                        s.meaning()))
            .toList();
    assertThat(Fences.table("README.md", "environment")).isEqualTo(settings);
  }

  static Stream<Path> requests() throws IOException {
    return files("demo-data/requests", ".http");
  }

  @ParameterizedTest
  @MethodSource("requests")
  void every_request_of_the_demo_is_answered(Path file) throws Exception {
    HttpResponse<String> answer = send(Files.readString(file));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
  }

  static Stream<Path> formulas() throws IOException {
    return files("demo-data/formulas", ".json");
  }

  @ParameterizedTest
  @MethodSource("formulas")
  void every_formula_of_the_demo_is_scaled(Path file) throws Exception {
    String id = file.getFileName().toString().replace(".json", "");
    String body = "{\"formula\":\"" + id + "\",\"to\":{\"mass\":\"3 kg\"}}";
    HttpResponse<String> answer = send("POST /v1/calculations/scaling\n\n" + body);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    Map<?, ?> result = (Map<?, ?>) ((Map<?, ?>) tree(answer.body())).get("result");
    assertThat(((Number) result.get("madeUpGrams")).doubleValue()).isCloseTo(3_000, within(1e-6));
  }

  @ParameterizedTest
  @MethodSource("formulas")
  void every_formula_of_the_demo_can_be_timed_with_one_cook(Path file) throws Exception {
    String id = file.getFileName().toString().replace(".json", "");
    String body =
        "{\"formulas\":[{\"formula\":\""
            + id
            + "\",\"to\":{\"mass\":\"3 kg\"}}],\"finishAt\":\"2026-05-02T09:00\",\"cooks\":1}";
    HttpResponse<String> answer = send("POST /v1/calculations/timeline\n\n" + body);
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    Map<?, ?> result = (Map<?, ?>) ((Map<?, ?>) tree(answer.body())).get("result");
    assertThat(result.get("finish")).isEqualTo("2026-05-02T09:00");
    assertThat(result.get("best")).isEqualTo(true);
  }

  private static Stream<Path> files(String folder, String ending) throws IOException {
    try (Stream<Path> files = Files.list(Fences.top().resolve(folder))) {
      return files.filter(f -> f.toString().endsWith(ending)).sorted().toList().stream();
    }
  }

  /** What is shown may leave out names and later entries; nothing that is shown may differ. */
  private static void assertShown(Object shown, Object answered, String at) {
    if (shown instanceof Map<?, ?> map) {
      assertThat(answered).as(at).isInstanceOf(Map.class);
      map.forEach(
          (name, value) -> assertShown(value, ((Map<?, ?>) answered).get(name), at + "/" + name));
    } else if (shown instanceof List<?> list) {
      assertThat(answered).as(at).isInstanceOf(List.class);
      List<?> entries = (List<?>) answered;
      assertThat(entries.size()).as(at).isGreaterThanOrEqualTo(list.size());
      for (int i = 0; i < list.size(); i++) {
        assertShown(list.get(i), entries.get(i), at + "/" + i);
      }
    } else {
      assertThat(answered).as(at).isEqualTo(shown);
    }
  }

  private static Object tree(String json) {
    return StrictJson.tree(json.getBytes(StandardCharsets.UTF_8), JsonLimits.usual());
  }

  private static HttpResponse<String> get(String path) throws Exception {
    return client()
        .send(HttpRequest.newBuilder(URI.create(address + path)).build(), BodyHandlers.ofString());
  }

  /** Sends a request as a page or file shows it: verb and path, headers, blank line, body. */
  private static HttpResponse<String> send(String text) throws Exception {
    int blank = text.indexOf("\n\n");
    String head = blank < 0 ? text.strip() : text.substring(0, blank);
    String body = blank < 0 ? "" : text.substring(blank + 2);
    String[] lines = head.split("\n", -1);
    String[] verbAndPath = lines[0].split(" ", 2);
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create(address + verbAndPath[1].strip()));
    for (int i = 1; i < lines.length; i++) {
      String[] header = lines[i].split(": ", 2);
      request.setHeader(header[0], header[1].strip());
    }
    if (!body.isBlank() && !head.contains("Content-Type")) {
      request.setHeader("Content-Type", "application/json");
    }
    request.method(
        verbAndPath[0], body.isBlank() ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
    return client().send(request.build(), BodyHandlers.ofString());
  }

  private static HttpClient client() {
    return HttpClient.newHttpClient();
  }
}
