package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looks at the program from outside: it asks the system to write to the disk, then answers. */
@Tag("outside-check")
class SyncTest {
  private static final int WRITES = 10;

  @TempDir Path directory;

  /** The time between a request and its answer, in seconds as strace tells them. */
  private record Span(double from, double until) {}

  @Test
  void between_request_and_answer_the_disk_is_waited_for() throws Exception {
    Path trace = directory.resolve("trace");
    var spans = new ArrayList<Span>();
    var http = HttpClient.newHttpClient();
    try (var server =
        ServeProcess.start(
            directory.resolve("data"),
            Map.of(),
            "strace",
            "-f",
            "--seccomp-bpf",
            "-ttt",
            "-e",
            "trace=fsync,fdatasync",
            "-o",
            trace.toString())) {
      for (int i = 0; i < WRITES; i++) {
        var request =
            HttpRequest.newBuilder(URI.create(server.address() + "/v1/formulas/cream-" + i))
                .header("Content-Type", "application/json")
                .header("If-None-Match", "*")
                .PUT(
                    BodyPublishers.ofString(
                        "{\"lines\":[{\"ingredient\":\"egg\",\"quantity\":\"1 each\"}]}"))
                .build();
        double from = now();
        assertThat(http.send(request, BodyHandlers.ofString()).statusCode()).isEqualTo(201);
        spans.add(new Span(from, now()));
        Thread.sleep(20);
      }
      Thread.sleep(300);
    }
    List<Double> syncs =
        Files.readAllLines(trace).stream()
            .filter(line -> line.contains("sync("))
            .map(line -> Double.parseDouble(line.trim().split(" +", 3)[1]))
            .toList();
    for (Span span : spans) {
      assertThat(syncs).anyMatch(at -> at >= span.from() && at <= span.until());
    }
    System.out.printf("%d writes, a sync between each request and its answer%n", WRITES);
  }

  private static double now() {
    return Duration.between(Instant.EPOCH, Instant.now()).toNanos() / 1e9;
  }
}
