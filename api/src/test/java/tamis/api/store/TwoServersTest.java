package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two programs serve one database: each sees what the other wrote, and no update is lost. */
class TwoServersTest {
  private static final int CLIENTS = 16;
  private static final int TRIES = 5;

  private final HttpClient http = HttpClient.newHttpClient();

  @TempDir Path directory;

  @Test
  void two_servers_share_a_database() throws Exception {
    Map<String, String> environment =
        Map.of("TAMIS_DB", PostgresForTests.emptySchema(), "TAMIS_DB_USER", PostgresForTests.USER);
    try (var one = ServeProcess.start(directory, environment);
        var other = ServeProcess.start(directory, environment)) {
      seen(one.address(), other.address());
      raced(one.address(), other.address());
    }
  }

  private void seen(String one, String other) throws Exception {
    assertThat(put(one, "seen", "\"\"", "100 g").statusCode()).isEqualTo(201);
    for (int grams = 200; grams <= 500; grams += 100) {
      String to = grams % 200 == 0 ? other : one;
      String from = to.equals(one) ? other : one;
      String tag = get(to, "/v1/formulas/seen").headers().firstValue("ETag").orElseThrow();
      assertThat(put(to, "seen", tag, grams + " g").statusCode()).isEqualTo(200);
      assertThat(scaled(to)).isEqualTo(2 * grams);
      Thread.sleep(250);
      assertThat(scaled(from)).isEqualTo(2 * grams);
    }
  }

  private double scaled(String address) throws Exception {
    String path = "/v1/calculations/scaling?formula=seen&to.factor=2&format=text&pick=/grams";
    return Double.parseDouble(get(address, path).body());
  }

  private void raced(String one, String other) throws Exception {
    put(one, "raced", "\"\"", "1 g");
    var threads = Executors.newFixedThreadPool(CLIENTS);
    try {
      List<Callable<Integer>> clients = new ArrayList<>();
      for (int i = 0; i < CLIENTS; i++) {
        String address = i % 2 == 0 ? one : other;
        clients.add(() -> writes(address));
      }
      int written = 1;
      for (Future<Integer> client : threads.invokeAll(clients)) {
        written += client.get();
      }
      String newest = "\"" + written + "\"";
      assertThat(written).isGreaterThan(1);
      for (String address : List.of(one, other)) {
        assertThat(get(address, "/v1/formulas/raced").headers().firstValue("ETag"))
            .contains(newest);
      }
    } finally {
      threads.shutdownNow();
    }
  }

  /** How many of so many tries were answered as written; the others came too late. */
  private int writes(String address) throws Exception {
    int written = 0;
    for (int i = 0; i < TRIES; i++) {
      String tag = get(address, "/v1/formulas/raced").headers().firstValue("ETag").orElseThrow();
      int status = put(address, "raced", tag, i + 1 + " g").statusCode();
      assertThat(status).isIn(200, 412);
      written += status == 200 ? 1 : 0;
    }
    return written;
  }

  private HttpResponse<String> get(String address, String path)
      throws IOException, InterruptedException {
    return http.send(
        HttpRequest.newBuilder(URI.create(address + path)).build(), BodyHandlers.ofString());
  }

  /** An empty tag makes a new formula. */
  private HttpResponse<String> put(String address, String id, String tag, String quantity)
      throws IOException, InterruptedException {
    String body = "{\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"" + quantity + "\"}]}";
    return http.send(
        HttpRequest.newBuilder(URI.create(address + "/v1/formulas/" + id))
            .header("Content-Type", "application/json")
            .header(tag.length() > 2 ? "If-Match" : "If-None-Match", tag.length() > 2 ? tag : "*")
            .PUT(BodyPublishers.ofString(body))
            .build(),
        BodyHandlers.ofString());
  }
}
