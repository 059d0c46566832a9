package tamis.api.store;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reads of a large store against those of a small one; see {@link StoreBenchmark}. */
class StoreReadBenchmark {
  private static final int ROUNDS = 9;
  private static final int SMALL = 1_000;
  private static final int LARGE = 100_000;
  private static final int READS = 3_000;

  @TempDir Path directory;

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
        "%s, %s: %.0f µs of %d formulas, %.0f µs of %d (%.2f ×); load %s%n",
        name,
        what,
        Measured.median(of1000),
        SMALL,
        Measured.median(of100000),
        LARGE,
        Measured.percent(of100000, of1000) / 100,
        Measured.load());
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
