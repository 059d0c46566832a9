package tamis.api.store;

import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Durable writes against {@link Bare}. Not run by itself: {@code mvn -q -pl api -am test
 * -Dtest='Store*Benchmark' -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class StoreBenchmark {
  private static final int TURNS = 25;

  /** Until most of what runs is compiled: a server runs for days. */
  private static final int TURNS_TO_WARM_UP = 15;

  private static final long NANOS_A_TURN = 300_000_000L;

  /** All rows are as long as each other. */
  static final String TITLE = "Coffee meringue cream " + "x".repeat(350);

  @TempDir Path directory;

  private int number;

  @Test
  void writes_to_sqlite() throws Exception {
    try (var store = SqlStore.sqlite(directory.resolve("a.db"), Clock.systemUTC());
        var other = SqlStore.sqlite(directory.resolve("b.db"), Clock.systemUTC());
        var bare = new Bare(other.database().pools().get(1))) {
      compare("SQLite", store, bare);
    }
  }

  @Test
  void writes_to_postgresql() throws Exception {
    String url = PostgresForTests.emptySchema();
    try (var store = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
        var bare = new Bare(store.database().pools().get(0))) {
      compare("PostgreSQL", store, bare);
    }
  }

  private void compare(String name, SqlStore store, Bare bare) throws Exception {
    var document = StoreContract.cream("cream", TITLE);
    number = store.create(document, "local").number();
    double[][] rates = new double[4][TURNS];
    for (int turn = -TURNS_TO_WARM_UP; turn < TURNS; turn++) {
      String prefix = "new-" + turn + "-";
      int at = Math.max(0, turn);
      rates[0][at] = Measured.rate(NANOS_A_TURN, n -> bare.insert("cream", document.json()));
      rates[1][at] =
          Measured.rate(
              NANOS_A_TURN, n -> number = store.replace(document, number, "local").number());
      rates[2][at] =
          Measured.rate(
              NANOS_A_TURN, n -> store.create(StoreContract.cream(prefix + n, TITLE), "local"));
      rates[3][at] = Measured.rate(NANOS_A_TURN, sixteen(store, "many-" + turn + "-"));
    }
    System.out.printf(
        "%s, durable rows/s: bare JDBC %.0f; replace %.0f (%.0f %%); create with its index %.0f"
            + " (%.0f %%); 16 threads %.0f (%.0f %%); load %s%n",
        name,
        Measured.median(rates[0]),
        Measured.median(rates[1]),
        Measured.percent(rates[1], rates[0]),
        Measured.median(rates[2]),
        Measured.percent(rates[2], rates[0]),
        Measured.median(rates[3]),
        Measured.percent(rates[3], rates[0]),
        Measured.load());
  }

  /** Each creates a formula and then replaces it. */
  private static List<Measured.Work> sixteen(SqlStore store, String prefix) {
    List<Measured.Work> works = new ArrayList<>();
    for (int i = 0; i < 16; i++) {
      var document = StoreContract.cream(prefix + i, TITLE);
      int[] newest = {0};
      works.add(
          n ->
              newest[0] =
                  (n == 0
                          ? store.create(document, "local")
                          : store.replace(document, newest[0], "local"))
                      .number());
    }
    return works;
  }
}
