package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.http.Server;
import tamis.api.http.ServerSettings;
import tamis.api.plugin.PluginLoader;
import tamis.api.version.Versions;
import tamis.engine.record.Limits;

/** What a caller is told when the store is full, locked, read-only or lost, and afterwards. */
class TroubleOverHttpTest {
  private static final String READ = "/v1/formulas/cream";
  private static final String SCALED =
      "/v1/calculations/scaling?formula=cream&to.factor=2&format=text&pick=/grams";

  private final HttpClient http = HttpClient.newHttpClient();

  @TempDir Path directory;

  @Test
  void a_full_store_answers_507_and_takes_writes_again_when_there_is_room() throws Exception {
    try (var store = sqlite();
        var server = server(store)) {
      created(server, "cream", 10);
      StoreTroubleTest.onWriter(store, "PRAGMA max_page_count = 60");
      int kept = 1;
      HttpResponse<String> answer = put(server, "large-" + kept, "x".repeat(8_000));
      while (answer.statusCode() == 201 && kept < 200) {
        kept++;
        answer = put(server, "large-" + kept, "x".repeat(8_000));
      }
      isProblem(answer, 507, "store-full");
      assertThat(get(server, "/v1/formulas/large-" + kept).statusCode()).isEqualTo(404);
      readsGoOn(server);
      StoreTroubleTest.onWriter(store, "PRAGMA max_page_count = 1000000");
      assertThat(put(server, "large-" + kept, "x".repeat(8_000)).statusCode()).isEqualTo(201);
    }
  }

  @Test
  void a_read_only_store_answers_503() throws Exception {
    try (var store = sqlite();
        var server = server(store)) {
      created(server, "cream", 10);
      StoreTroubleTest.onWriter(store, "PRAGMA query_only = 1");
      isProblem(put(server, "other", "Other"), 503, "store-unavailable");
      readsGoOn(server);
      StoreTroubleTest.onWriter(store, "PRAGMA query_only = 0");
      assertThat(put(server, "other", "Other").statusCode()).isEqualTo(201);
    }
  }

  @Test
  void a_locked_store_answers_503() throws Exception {
    try (var store = sqlite();
        var server = server(store);
        var other = DriverManager.getConnection("jdbc:sqlite:" + directory.resolve("tamis.db"));
        var statement = other.createStatement()) {
      created(server, "cream", 10);
      statement.execute("BEGIN IMMEDIATE");
      isProblem(put(server, "other", "Other"), 503, "store-unavailable");
      readsGoOn(server);
      statement.execute("ROLLBACK");
      assertThat(put(server, "other", "Other").statusCode()).isEqualTo(201);
    }
  }

  @Test
  void a_lost_database_answers_503_is_not_ready_and_comes_back() throws Exception {
    String direct = PostgresForTests.emptySchema();
    try (var relay = new Relay(PostgresForTests.port());
        var store =
            SqlStore.postgresql(
                direct.replace(":" + PostgresForTests.port() + "/", ":" + relay.port() + "/"),
                PostgresForTests.USER,
                null,
                Clock.systemUTC());
        var server = server(store)) {
      created(server, "cream", 10);
      readsGoOn(server);
      assertThat(get(server, "/health/ready").statusCode()).isEqualTo(200);
      relay.cut();
      isProblem(put(server, "other", "Other"), 503, "store-unavailable");
      isProblem(get(server, READ), 503, "store-unavailable");
      HttpResponse<String> ready = get(server, "/health/ready");
      assertThat(ready.statusCode()).isEqualTo(503);
      assertThat(ready.body()).contains("\"status\":\"store-unavailable\"");
      assertThat(get(server, "/health/live").statusCode()).isEqualTo(200);
      // What was looked up at this revision is still known, and what needs no store is untouched.
      assertThat(get(server, SCALED).body()).isEqualTo("20");
      assertThat(get(server, "/v1/calculations/conversion?quantity=1%20kg&unit=g").statusCode())
          .isEqualTo(200);
      relay.mend();
      readsGoOn(server);
      assertThat(get(server, "/health/ready").statusCode()).isEqualTo(200);
      assertThat(put(server, "other", "Other").statusCode()).isEqualTo(201);
    }
  }

  private void readsGoOn(Server server) throws Exception {
    assertThat(get(server, READ).statusCode()).isEqualTo(200);
    assertThat(get(server, "/v1/formulas?q=cream").body()).contains("\"cream\"");
    assertThat(get(server, SCALED).body()).isEqualTo("20");
  }

  private static void isProblem(HttpResponse<String> answer, int status, String code) {
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
    assertThat(answer.headers().firstValue("Content-Type")).contains("application/problem+json");
    assertThat(answer.body()).contains("\"code\":\"" + code + "\"");
    assertThat(answer.body()).doesNotContain("Exception").doesNotContain("SQL");
    assertThat(answer.headers().firstValue("Retry-After").isPresent()).isEqualTo(status == 503);
  }

  private void created(Server server, String id, int grams) throws Exception {
    String lines = "\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"" + grams + " g\"}]";
    assertThat(sent(server, id, "{" + lines + "}").statusCode()).isEqualTo(201);
  }

  private HttpResponse<String> put(Server server, String id, String notes) throws Exception {
    return sent(
        server,
        id,
        "{\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"1 g\"}],\"notes\":\""
            + notes
            + "\"}");
  }

  private HttpResponse<String> sent(Server server, String id, String body) throws Exception {
    return http.send(
        HttpRequest.newBuilder(URI.create(server.address() + "/v1/formulas/" + id))
            .header("Content-Type", "application/json")
            .header("If-None-Match", "*")
            .PUT(BodyPublishers.ofString(body))
            .build(),
        BodyHandlers.ofString());
  }

  private HttpResponse<String> get(Server server, String path) throws Exception {
    return http.send(
        HttpRequest.newBuilder(URI.create(server.address() + path)).build(),
        BodyHandlers.ofString());
  }

  private SqlStore sqlite() {
    return SqlStore.sqlite(directory.resolve("tamis.db"), Clock.systemUTC());
  }

  static Server server(Store store) {
    var plugins =
        PluginLoader.load(
            TroubleOverHttpTest.class.getClassLoader(),
            null,
            Versions.ofThisBuild(),
            Duration.ofSeconds(10));
    var settings =
        new ServerSettings(
            "127.0.0.1",
            0,
            false,
            List.of(),
            1 << 20,
            1 << 20,
            8 << 10,
            32,
            Limits.usual(),
            Duration.ofSeconds(20),
            1 << 20);
    return Server.start(settings, store, plugins, Versions.ofThisBuild());
  }
}
