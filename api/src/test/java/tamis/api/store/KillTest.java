package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.engine.formula.Formula;

/**
 * Kills the program while it writes, again and again: {@code mvn -Pkill -pl api -am test}. What it
 * had answered is there afterwards. This says nothing about a power cut, for the system keeps what
 * a process had written; see {@code SqliteStoreTest} for the setting on which that rests.
 */
@Tag("kill")
class KillTest {
  private static final int ROUNDS = Integer.getInteger("tamis.kill.rounds", 20);
  private static final long SEED = Long.getLong("tamis.kill.seed", System.nanoTime());
  private static final int LONGEST_ROUND = 1_200;

  @TempDir Path directory;

  @Test
  void sqlite_keeps_what_was_answered() throws Exception {
    rounds(Map.of(), () -> SqlStore.sqlite(DataDirectory.fileIn(directory), Clock.systemUTC()));
  }

  @Test
  void postgresql_keeps_what_was_answered() throws Exception {
    String url = PostgresForTests.emptySchema();
    rounds(
        Map.of("TAMIS_DB", url, "TAMIS_DB_USER", PostgresForTests.USER),
        () -> SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC()));
  }

  private void rounds(Map<String, String> environment, Supplier<SqlStore> opened) throws Exception {
    var clients = new KilledClients();
    var random = new Random(SEED);
    Files.createDirectories(directory);
    try (var store = opened.get()) {
      store.create(
          Document.of(StoreContract.trial("killed", StoreContract.observation("first", "1 °C"))),
          "local");
    }
    for (int round = 1; round <= ROUNDS; round++) {
      int before = clients.answered.size() + clients.observed.size();
      try (var server = ServeProcess.start(directory, environment)) {
        var threads = clients.start(server.address(), random.nextLong());
        while (clients.answered.size() + clients.observed.size() == before) {
          Thread.sleep(1);
        }
        Thread.sleep(random.nextInt(LONGEST_ROUND));
        server.kill();
        for (Thread thread : threads) {
          thread.join();
        }
      }
      try (var store = opened.get()) {
        check(store, clients);
      } catch (AssertionError lost) {
        throw new AssertionError("round " + round + ", seed " + SEED, lost);
      }
    }
    assertThat(clients.wrong).isEmpty();
    assertThat(clients.answered.size()).isGreaterThan(5 * ROUNDS);
    assertThat(clients.observed.size()).isGreaterThan(ROUNDS);
    System.out.printf(
        "%s: %d rounds, %d answered writes, all there (seed %d)%n",
        environment.isEmpty() ? "SQLite" : "PostgreSQL",
        ROUNDS,
        clients.answered.size() + clients.observed.size(),
        SEED);
  }

  private static void check(SqlStore store, KilledClients clients) throws SQLException {
    for (var answered : clients.answered) {
      Stored stored = store.read(Kind.FORMULA, answered.id(), answered.number());
      assertThat(stored).as("%s", answered).isNotNull();
      String title = stored.isDeleted() ? "" : ((Formula) stored.document().record()).title();
      assertThat(title).isEqualTo(answered.title());
    }
    assertThat(Trials.read(store, "killed").trial().observations())
        .extracting(one -> one.id())
        .containsAll(clients.observed);
    for (var row : store.list(Kind.FORMULA, "", 1_000, null).rows()) {
      var revisions = store.revisions(Kind.FORMULA, row.id());
      assertThat(row.number()).isEqualTo(revisions.size());
      for (Stored stored : revisions) {
        if (!stored.isDeleted()) {
          var formula = (Formula) stored.document().record();
          assertThat(clients.sent).contains(formula.notes());
          assertThat(formula.notes()).startsWith(formula.title() + " ");
        }
      }
    }
    if (store.database().dialect() == Dialect.SQLITE) {
      assertThat(StoreTroubleTest.onWriter(store, "PRAGMA integrity_check")).isEqualTo("ok");
    }
  }
}
