package tamis.api.store;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * 16 HTTP clients that create and replace, against one thread and against 16 that insert by {@link
 * Bare}; see {@link StoreBenchmark}. Clients, server and database share the machine.
 */
class StoreHttpBenchmark {
  private static final int CLIENTS = 16;
  private static final int TURNS = 15;
  private static final long NANOS_A_TURN = 500_000_000L;
  private static final long NANOS_TO_WARM_UP = 10_000_000_000L;

  @TempDir Path directory;

  @Test
  void clients_of_sqlite() throws Exception {
    try (var store = SqlStore.sqlite(directory.resolve("a.db"), Clock.systemUTC());
        var other = SqlStore.sqlite(directory.resolve("b.db"), Clock.systemUTC())) {
      compare("SQLite", store, other); // whose writers wait for its one connection
    }
  }

  @Test
  void clients_of_postgresql() throws Exception {
    String url = PostgresForTests.emptySchema();
    try (var store = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
        var other = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC())) {
      other.database().pools().forEach(pool -> pool.setMaximumPoolSize(CLIENTS));
      compare("PostgreSQL", store, other);
    }
  }

  private static void compare(String name, SqlStore store, SqlStore other) throws Exception {
    String json = StoreContract.cream("cream", StoreBenchmark.TITLE).json();
    var pool = other.database().pools().get(1);
    boolean oneWriter = pool.getMaximumPoolSize() == 1;
    List<Bare> bares = new ArrayList<>();
    for (int i = 0; i < (oneWriter ? 1 : CLIENTS); i++) {
      bares.add(new Bare(pool));
    }
    List<HttpClient> clients = new ArrayList<>();
    for (int i = 0; i < CLIENTS; i++) {
      clients.add(HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build());
    }
    double[][] rates = new double[3][TURNS];
    try (var server = TroubleOverHttpTest.server(store)) {
      Measured.rate(NANOS_TO_WARM_UP, works(clients, server.address(), -1));
      for (int turn = 0; turn < TURNS; turn++) {
        rates[0][turn] = Measured.rate(NANOS_A_TURN, n -> bares.get(0).insert("cream", json));
        rates[1][turn] = Measured.rate(NANOS_A_TURN, writers(bares, json));
        rates[2][turn] = Measured.rate(NANOS_A_TURN, works(clients, server.address(), turn));
      }
    }
    for (Bare bare : bares) {
      bare.close();
    }
    System.out.printf(
        "%s, durable rows/s: one thread of bare JDBC %.0f; 16 of them %.0f; 16 HTTP clients %.0f"
            + " (%.0f %% of one, %.0f %% of 16); load %s%n",
        name,
        Measured.median(rates[0]),
        Measured.median(rates[1]),
        Measured.median(rates[2]),
        Measured.percent(rates[2], rates[0]),
        Measured.percent(rates[2], rates[1]),
        Measured.load());
  }

  private static List<Measured.Work> writers(List<Bare> bares, String json) {
    List<Measured.Work> works = new ArrayList<>();
    for (int i = 0; i < CLIENTS; i++) {
      Bare bare = bares.get(i % bares.size());
      works.add(
          n -> {
            synchronized (bare) {
              bare.insert("cream", json);
            }
          });
    }
    return works;
  }

  /** Each creates a formula and then replaces it. */
  private static List<Measured.Work> works(List<HttpClient> clients, String address, int turn) {
    List<Measured.Work> works = new ArrayList<>();
    for (int i = 0; i < CLIENTS; i++) {
      HttpClient http = clients.get(i);
      URI uri = URI.create(address + "/v1/formulas/many-" + (turn + 1) + "-" + i);
      works.add(n -> put(http, uri, n));
    }
    return works;
  }

  private static void put(HttpClient http, URI uri, long revision) throws Exception {
    String body =
        "{\"title\":\""
            + StoreBenchmark.TITLE
            + "\",\"lines\":[{\"ingredient\":\"egg-white\",\"quantity\":\"150 g\"}]}";
    var request =
        HttpRequest.newBuilder(uri)
            .header("Content-Type", "application/json")
            .header(
                revision == 0 ? "If-None-Match" : "If-Match",
                revision == 0 ? "*" : "\"" + revision + "\"")
            .PUT(BodyPublishers.ofString(body))
            .build();
    int status = http.send(request, BodyHandlers.ofString()).statusCode();
    if (status != (revision == 0 ? 201 : 200)) {
      throw new IllegalStateException("answered " + status);
    }
  }
}
