package tamis.api.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.http.KeptOpen;

/**
 * 16 HTTP clients that create and replace, against one thread and against 16 that insert by {@link
 * Bare}; see {@link StoreBenchmark}. Clients, server and database share the machine, so that a
 * client is one socket, kept open.
 */
class StoreHttpBenchmark {
  private static final int CLIENTS = 16;
  private static final int TURNS = 15;
  private static final long NANOS_A_TURN = 500_000_000L;

  /** On two cores the server is compiled only after a minute of such writes. */
  private static final long NANOS_TO_WARM_UP = 90_000_000_000L;

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
    double[][] rates = new double[3][TURNS];
    List<KeptOpen> clients = new ArrayList<>();
    try (var server = TroubleOverHttpTest.server(store)) {
      for (int i = 0; i < CLIENTS; i++) {
        clients.add(new KeptOpen(server.port()));
      }
      Measured.rate(NANOS_TO_WARM_UP, works(clients, -1));
      for (int turn = 0; turn < TURNS; turn++) {
        rates[0][turn] = Measured.rate(NANOS_A_TURN, n -> bares.get(0).insert("cream", json));
        rates[1][turn] = Measured.rate(NANOS_A_TURN, writers(bares, json));
        rates[2][turn] = Measured.rate(NANOS_A_TURN, works(clients, turn));
      }
      clients.forEach(KeptOpen::close);
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
  private static List<Measured.Work> works(List<KeptOpen> clients, int turn) {
    List<Measured.Work> works = new ArrayList<>();
    for (int i = 0; i < CLIENTS; i++) {
      KeptOpen http = clients.get(i);
      String path = "/v1/formulas/many-" + (turn + 1) + "-" + i;
      works.add(n -> put(http, path, n));
    }
    return works;
  }

  /** Fails if the answer is neither 200 nor 201. */
  private static void put(KeptOpen http, String path, long revision) throws IOException {
    String body =
        "{\"title\":\""
            + StoreBenchmark.TITLE
            + "\",\"lines\":[{\"ingredient\":\"egg-white\",\"quantity\":\"150 g\"}]}";
    String condition = revision == 0 ? "If-None-Match: *" : "If-Match: \"" + revision + "\"";
    String request =
        "PUT "
            + path
            + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
            + condition
            + "\r\nContent-Length: "
            + body.length()
            + "\r\n\r\n"
            + body;
    http.ask(request.getBytes(StandardCharsets.US_ASCII));
  }
}
