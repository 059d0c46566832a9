package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.plugin.orders.BatchPlan.Load;
import tamis.plugin.orders.BatchPlan.Machine;

class BatchPlanTest {

  /** {@code 2-5 / 0-3} as machines. */
  private static List<Machine> machines(String text) {
    List<Machine> machines = new ArrayList<>();
    for (String one : text.split(" / ")) {
      String[] ends = one.split("-");
      machines.add(
          new Machine(
              "bowl " + machines.size(), Double.parseDouble(ends[0]), Double.parseDouble(ends[1])));
    }
    return machines;
  }

  @ParameterizedTest(name = "{0} on {1} by {2}: {3} in {4} batches ({5})")
  @CsvFileSource(resources = "/batches.csv", delimiter = '|', numLinesToSkip = 1)
  void worked_by_hand(
      double need, String machines, double step, double made, int batches, String source) {
    BatchPlan plan = BatchPlan.of(need, machines(machines), step);
    assertThat(plan).as(source).isNotNull();
    assertThat(plan.made()).as(source).isEqualTo(made, within(1e-9));
    assertThat(plan.loads().stream().mapToInt(Load::number).sum()).as(source).isEqualTo(batches);
    assertThat(plan.best()).isTrue();
    assertThat(plan.gap()).isZero();
  }

  /**
   * All that must hold of any plan; and nothing that a plain trial of all choices finds is less.
   */
  @Test
  void batches_cover_the_need_fit_their_machines_and_leave_the_least_over() {
    long seed = Long.getLong("tamis.seed", 9L);
    Random random = new Random(seed);
    for (int round = 0; round < 2_000; round++) {
      List<Machine> machines = new ArrayList<>();
      for (int i = 0; i <= random.nextInt(3); i++) {
        double most = 1 + random.nextInt(12);
        machines.add(
            new Machine("m" + i, random.nextInt(2) * random.nextInt((int) most + 1), most));
      }
      double step = random.nextBoolean() ? 0 : 1.0 / (1 + random.nextInt(6));
      double need = 0.1 + random.nextInt(400) / 10.0;
      BatchPlan plan = BatchPlan.of(need, machines, step);
      String seen =
          "seed " + seed + ", round " + round + ": " + need + " on " + machines + " by " + step;
      assertThat(plan).as(seen).isNotNull();
      double sum = plan.loads().stream().mapToDouble(l -> l.size() * l.number()).sum();
      assertThat(sum).as(seen).isEqualTo(plan.made(), within(1e-6));
      assertThat(plan.made()).as(seen).isGreaterThanOrEqualTo(need - 1e-9);
      for (Load load : plan.loads()) {
        Machine machine =
            machines.stream()
                .filter(m -> m.name().equals(load.machine()))
                .findFirst()
                .orElseThrow();
        assertThat(load.size()).as(seen).isBetween(machine.least() - 1e-9, machine.most() + 1e-9);
        assertThat(load.size()).as(seen).isGreaterThan(0);
        if (step > 0) {
          assertThat(load.size() / step)
              .as(seen)
              .isEqualTo(Math.rint(load.size() / step), within(1e-6));
        }
      }
      assertThat(plan.made())
          .as(seen)
          .isLessThanOrEqualTo(leastByTrial(need, machines, step) + 1e-6);
    }
  }

  private static double leastByTrial(double need, List<Machine> machines, double step) {
    double wanted = step > 0 ? Math.ceil(need / step - 1e-9) * step : need;
    double best = Double.POSITIVE_INFINITY;
    int[] counts = new int[3];
    for (counts[0] = 0; counts[0] <= 41; counts[0]++) {
      for (counts[1] = 0; counts[1] <= (machines.size() > 1 ? 41 : 0); counts[1]++) {
        for (counts[2] = 0; counts[2] <= (machines.size() > 2 ? 41 : 0); counts[2]++) {
          double least = 0;
          double most = 0;
          for (int i = 0; i < machines.size(); i++) {
            double low = machines.get(i).least();
            double high = machines.get(i).most();
            if (step > 0) {
              low = Math.max(step, Math.ceil(low / step - 1e-9) * step);
              high = Math.floor(high / step + 1e-9) * step;
            }
            least += counts[i] * low;
            most += counts[i] * high;
          }
          if (most >= wanted - 1e-9) {
            best = Math.min(best, Math.max(wanted, least));
          }
        }
      }
    }
    return best;
  }

  @Test
  void no_machine_takes_a_whole_step() {
    assertThat(BatchPlan.of(3, machines("0-0.4"), 1)).isNull();
  }

  @Test
  void a_search_that_is_cut_off_says_how_much_less_it_might_be() {
    List<Machine> machines = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      machines.add(new Machine("m" + i, 7 + i * 0.001, 7 + i * 0.001));
    }
    BatchPlan plan = BatchPlan.of(999.999, machines, 0);
    assertThat(plan).isNotNull();
    assertThat(plan.made()).isGreaterThanOrEqualTo(999.999);
    assertThat(plan.best()).isFalse();
    assertThat(plan.gap()).isEqualTo(plan.made() - 999.999, within(1e-9)).isPositive();
  }

  @Test
  void a_great_need_is_settled_at_once() {
    BatchPlan plan = BatchPlan.of(1e7, machines("0-3 / 1-2"), 0);
    assertThat(plan).isNotNull();
    assertThat(plan.made()).isEqualTo(1e7);
    assertThat(plan.loads()).hasSizeLessThan(5);
  }
}
