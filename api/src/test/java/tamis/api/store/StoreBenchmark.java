package tamis.api.store;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteConfig;

/**
 * Durable writes against bare JDBC on the same database, and reads of a large store against those
 * of a small one. Not run by itself: {@code mvn -q -pl api -am test -Dtest=StoreBenchmark
 * -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class StoreBenchmark {
  private static final int ROUNDS = 5;
  private static final long NANOS_A_ROUND = 1_500_000_000L;
  private static final int SMALL = 1_000;
  private static final int LARGE = 100_000;
  private static final int READS = 3_000;
  private static final String ROW = "INSERT INTO bare VALUES (?, ?, ?, ?, ?, ?, ?)";
  private static final String TABLE =
      "CREATE TABLE bare (kind TEXT NOT NULL, id TEXT NOT NULL, number INTEGER NOT NULL,"
          + " revision BIGINT NOT NULL, written TEXT NOT NULL, author TEXT NOT NULL, body TEXT,"
          + " PRIMARY KEY (kind, id, number))";

  /** All rows are as long as each other. */
  private static final String TITLE = "Coffee meringue cream " + "x".repeat(350);

  @TempDir Path directory;

  private interface Write {
    void run(long number) throws SQLException;
  }

  @Test
  void writes_to_sqlite() throws SQLException {
    var config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    try (var store = SqlStore.sqlite(directory.resolve("a.db"), Clock.systemUTC());
        var bare = config.createConnection("jdbc:sqlite:" + directory.resolve("b.db"))) {
      compare("SQLite", store, bare);
    }
  }

  @Test
  void writes_to_postgresql() throws SQLException {
    String url = PostgresForTests.emptySchema();
    try (var store = SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
        var bare = DriverManager.getConnection(url, PostgresForTests.USER, "")) {
      compare("PostgreSQL", store, bare);
    }
  }

  /** Rounds take turns, so that what else the machine does falls on all alike. */
  private static void compare(String name, SqlStore store, Connection bare) throws SQLException {
    try (var statement = bare.createStatement()) {
      statement.execute(TABLE);
    }
    var document = StoreContract.cream("cream", TITLE);
    store.create(document, "local");
    var number = new AtomicLong(1);
    double[][] rates = new double[4][ROUNDS];
    try (var row = bare.prepareStatement(ROW)) {
      for (int round = 0; round < ROUNDS; round++) {
        rates[0][round] = rate(n -> insert(row, n, document.json()));
        rates[1][round] =
            rate(n -> number.set(store.replace(document, number.intValue(), "local").number()));
        String prefix = "new-" + round + "-";
        rates[2][round] = rate(n -> store.create(StoreContract.cream(prefix + n, TITLE), "a"));
        rates[3][round] = rateOfSixteen(store, "many-" + round + "-");
      }
    }
    double base = median(rates[0]);
    System.out.printf(
        "%s, durable rows/s: bare JDBC %.0f; replace %.0f (%.0f %%); create with its index %.0f"
            + " (%.0f %%); 16 threads %.0f (%.0f %%)%n",
        name,
        base,
        median(rates[1]),
        100 * median(rates[1]) / base,
        median(rates[2]),
        100 * median(rates[2]) / base,
        median(rates[3]),
        100 * median(rates[3]) / base);
  }

  private static final AtomicLong INSERTED = new AtomicLong();

  private static void insert(PreparedStatement row, long n, String json) throws SQLException {
    row.setString(1, "formula");
    row.setString(2, "cream");
    row.setInt(3, (int) INSERTED.incrementAndGet());
    row.setLong(4, n);
    row.setString(5, Instant.now().toString());
    row.setString(6, "local");
    row.setString(7, json);
    row.executeUpdate();
  }

  private static double rate(Write write) throws SQLException {
    long from = System.nanoTime();
    long written = 0;
    while (System.nanoTime() - from < NANOS_A_ROUND) {
      write.run(written++);
    }
    return written * 1e9 / (System.nanoTime() - from);
  }

  private static double rateOfSixteen(SqlStore store, String prefix) {
    var written = new AtomicLong();
    var threads = Executors.newFixedThreadPool(16);
    long from = System.nanoTime();
    for (int i = 0; i < 16; i++) {
      String id = prefix + i;
      threads.execute(
          () -> {
            var document = StoreContract.cream(id, TITLE);
            int number = store.create(document, "local").number();
            while (System.nanoTime() - from < NANOS_A_ROUND) {
              number = store.replace(document, number, "local").number();
              written.incrementAndGet();
            }
          });
    }
    threads.shutdown();
    try {
      threads.awaitTermination(1, TimeUnit.MINUTES);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    return written.get() * 1e9 / (System.nanoTime() - from);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  @Test
  void reads_from_sqlite() {
    try (var small = SqlStore.sqlite(directory.resolve("s.db"), Clock.systemUTC());
        var large = SqlStore.sqlite(directory.resolve("l.db"), Clock.systemUTC())) {
      compareReads("SQLite", small, large);
    }
  }

  @Test
  void reads_from_postgresql() {
    try (var small = postgresql();
        var large = postgresql()) {
      compareReads("PostgreSQL", small, large);
    }
  }

  private static SqlStore postgresql() {
    return SqlStore.postgresql(
        PostgresForTests.emptySchema(), PostgresForTests.USER, null, Clock.systemUTC());
  }

  private interface Read {
    void run(SqlStore store, int formulas, Random random);
  }

  private static void compareReads(String name, SqlStore small, SqlStore large) {
    fill(small, SMALL);
    fill(large, LARGE);
    report(name, "read by id", small, large, (s, n, r) -> s.read(Kind.FORMULA, id(r.nextInt(n))));
    report(
        name,
        "calculate by id",
        small,
        large,
        (s, n, r) ->
            new StoreShelf(s, new Counters.At(s.revision(), 0, null))
                .formula(id(r.nextInt(n)), null));
    report(name, "first page", small, large, (s, n, r) -> s.list(Kind.FORMULA, "", 50, null));
    report(
        name,
        "rare word",
        small,
        large,
        (s, n, r) -> s.list(Kind.FORMULA, "rare" + r.nextInt(n), 50, null));
    report(
        name, "common word", small, large, (s, n, r) -> s.list(Kind.FORMULA, "coffee", 50, null));
    report(
        name,
        "common beginnings",
        small,
        large,
        (s, n, r) -> s.list(Kind.FORMULA, "cof egg", 50, null));
  }

  private static void report(String name, String what, SqlStore small, SqlStore large, Read read) {
    double[] of1000 = new double[ROUNDS];
    double[] of100000 = new double[ROUNDS];
    for (int round = -1; round < ROUNDS; round++) {
      double first = micros(small, SMALL, read);
      double second = micros(large, LARGE, read);
      if (round >= 0) {
        of1000[round] = first;
        of100000[round] = second;
      }
    }
    System.out.printf(
        "%s, %s: %.0f µs of %d formulas, %.0f µs of %d (%.2f ×)%n",
        name,
        what,
        median(of1000),
        SMALL,
        median(of100000),
        LARGE,
        median(of100000) / median(of1000));
  }

  private static double micros(SqlStore store, int formulas, Read read) {
    var random = new Random(1);
    long from = System.nanoTime();
    for (int i = 0; i < READS; i++) {
      read.run(store, formulas, random);
    }
    return (System.nanoTime() - from) / 1e3 / READS;
  }

  private static String id(int number) {
    return "formula-" + number;
  }

  /** As an import would, since so many durable writes take minutes. */
  private static void fill(SqlStore store, int count) {
    var dump = new StringBuilder();
    dump.append("{\"kind\":\"store\",\"schema\":1,\"revision\":").append(count);
    dump.append(",\"trials\":0,\"lines\":").append(count).append("}\n");
    for (int i = 0; i < count; i++) {
      String title = (i % 5 == 0 ? "Coffee cream rare" : "Vanilla cream rare") + i;
      dump.append("{\"kind\":\"formula\",\"id\":\"").append(id(i));
      dump.append("\",\"number\":1,\"revision\":").append(i + 1);
      dump.append(",\"written\":\"2026-04-11T08:00:00Z\",\"author\":\"local\"");
      dump.append(Dump.DOCUMENT).append(StoreContract.cream(id(i), title).json()).append("}\n");
    }
    Load.into(
        store, new ByteArrayInputStream(dump.toString().getBytes(StandardCharsets.UTF_8)), false);
  }
}
