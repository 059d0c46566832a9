package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Who waits for the same moment goes together, and each has an outcome of its own. */
class TurnsTest {
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final List<List<String>> groups = Collections.synchronizedList(new ArrayList<>());
  private final CountDownLatch begun = new CountDownLatch(1);
  private final CountDownLatch goOn = new CountDownLatch(1);

  @AfterEach
  void stop() {
    threads.shutdownNow();
  }

  @Test
  void one_alone_goes_at_once_on_its_own_thread() {
    var on = new ArrayList<Thread>();
    var turns =
        new Turns(
            writes -> {
              on.add(Thread.currentThread());
              return outcomes(writes);
            });
    assertThat(turns.keep(write("a")).about()).isEqualTo("a");
    assertThat(on).containsExactly(Thread.currentThread());
  }

  @Test
  void those_who_wait_meanwhile_go_together() throws Exception {
    List<Future<Outcome>> all = kept(new Turns(this::keepSlowly));
    for (int i = 0; i < all.size(); i++) {
      assertThat(all.get(i).get().about()).isEqualTo("w" + i);
    }
    assertThat(groups).hasSize(2);
    assertThat(groups.get(0)).containsExactly("w0");
    assertThat(groups.get(1)).hasSize(9);
  }

  @Test
  void one_that_fails_takes_no_other_with_it() throws Exception {
    List<Future<Outcome>> all =
        kept(new Turns(writes -> failingFor(writes, "w4", FaultCode.STORE_FULL)));
    for (int i = 0; i < all.size(); i++) {
      if (i == 4) {
        assertThatThrownBy(all.get(i)::get).hasRootCauseInstanceOf(Refusal.class);
      } else {
        assertThat(all.get(i).get().about()).isEqualTo("w" + i);
      }
    }
  }

  @Test
  void an_error_in_a_group_leaves_nobody_waiting() throws Exception {
    List<Future<Outcome>> all =
        kept(
            new Turns(
                writes -> {
                  if (writes.size() > 1) {
                    throw new OutOfMemoryError("as in a test");
                  }
                  return keepSlowly(writes);
                }));
    assertThat(all.get(0).get(30, TimeUnit.SECONDS).about()).isEqualTo("w0");
    for (Future<Outcome> one : all.subList(1, all.size())) {
      assertThatThrownBy(() -> one.get(30, TimeUnit.SECONDS))
          .hasRootCauseInstanceOf(OutOfMemoryError.class);
    }
  }

  @Test
  void a_database_that_is_away_is_not_asked_for_each() throws Exception {
    List<Future<Outcome>> all =
        kept(new Turns(writes -> failingFor(writes, "w4", FaultCode.STORE_UNAVAILABLE)));
    for (Future<Outcome> one : all.subList(1, all.size())) {
      assertThatThrownBy(one::get).hasRootCauseInstanceOf(Refusal.class);
    }
    assertThat(groups).hasSize(2);
  }

  /** Nine that come while the first is at it. */
  private List<Future<Outcome>> kept(Turns turns) throws InterruptedException {
    List<Future<Outcome>> all = new ArrayList<>();
    all.add(threads.submit(() -> turns.keep(write("w0"))));
    begun.await();
    for (int i = 1; i < 10; i++) {
      Write write = write("w" + i);
      all.add(threads.submit(() -> turns.keep(write)));
    }
    while (turns.waiting() < 9) {
      Thread.sleep(1);
    }
    goOn.countDown();
    return all;
  }

  private List<Outcome> failingFor(List<Write> writes, String id, FaultCode code) {
    keepSlowly(writes);
    if (writes.stream().anyMatch(write -> write.id().equals(id))) {
      throw Refusal.of(code, "as asked for");
    }
    return outcomes(writes);
  }

  private List<Outcome> keepSlowly(List<Write> writes) {
    groups.add(writes.stream().map(Write::id).toList());
    begun.countDown();
    try {
      goOn.await();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
    return outcomes(writes);
  }

  private static List<Outcome> outcomes(List<Write> writes) {
    return writes.stream()
        .map(write -> new Outcome(Outcome.Why.KEPT, 1, 1, Instant.EPOCH, write.id()))
        .toList();
  }

  private static Write write(String id) {
    return Write.of(StoreContract.cream(id, "Cream"), null, 0, Write.ANY, "local");
  }
}
