package tamis.plugin.timeline.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The best order of work, held against trying every time of every stage. */
class PlannerTest {
  private static final int STAGES = 5;
  private static final int HORIZON = 13;

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  /** Five stages of whole units, with waits, stations, hands and shifts. */
  static Network small(long seed) {
    Random random = new Random(seed);
    long[] lengths = random.longs(STAGES, 0, 5).toArray();
    boolean[] hands = new boolean[STAGES];
    List<Link> links = new ArrayList<>();
    List<Integer> oven = new ArrayList<>();
    List<Integer> hand = new ArrayList<>();
    for (int i = 0; i < STAGES; i++) {
      hands[i] = random.nextInt(3) > 0;
      if (hands[i]) {
        hand.add(i);
      }
      if (random.nextBoolean()) {
        oven.add(i);
      }
      for (int before = 0; before < i; before++) {
        if (random.nextInt(4) == 0) {
          links.add(new Link(before, i, lengths[before]));
          if (random.nextInt(3) == 0) { // a longest wait
            links.add(new Link(i, before, -lengths[before] - random.nextInt(3)));
          }
        } else if (random.nextInt(8) == 0) { // finish together
          long apart = random.nextInt(2);
          links.add(new Link(before, i, lengths[before] - lengths[i] - apart));
          links.add(new Link(i, before, lengths[i] - lengths[before] - apart));
        }
      }
    }
    WorkingTime shifts =
        random.nextInt(3) > 0
            ? WorkingTime.always()
            : WorkingTime.of(
                List.of(new WorkingTime.Window(0, 5), new WorkingTime.Window(7, HORIZON)));
    long[] late = new long[STAGES];
    for (int i = 0; i < STAGES; i++) {
      late[i] = HORIZON - lengths[i];
    }
    return new Network(
        lengths,
        new long[STAGES],
        late,
        hands,
        shifts,
        links,
        List.of(
            new Pool("oven", 1 + random.nextInt(2), oven),
            new Pool("hands", 1 + random.nextInt(2), hand)));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void the_plan_ends_when_the_best_of_all_plans_ends(long seed) {
    Network network = small(seed);
    long best = bruteForce(network, new long[STAGES], 0, Long.MAX_VALUE);
    Outcome outcome = Planner.thorough().earliest(network);
    if (best == Long.MAX_VALUE) {
      assertThat(outcome).as("a plan where there is none").isNull();
    } else {
      assertThat(outcome).isNotNull();
      assertThat(outcome.isBest()).isTrue();
      assertThat(network.finish(outcome.starts())).isEqualTo(best);
      assertThat(violations(network, outcome.starts())).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void backwards_it_takes_as_long_as_the_best_of_all_plans(long seed) {
    Network network = small(seed);
    Network turned = network.mirrored(HORIZON);
    long best = bruteForceMirrored(turned);
    Outcome outcome = Planner.thorough().latest(network, HORIZON);
    if (outcome == null) {
      assertThat(best).isEqualTo(Long.MAX_VALUE);
    } else {
      assertThat(Network.start(outcome.starts())).isEqualTo(-best);
      assertThat(violations(network, outcome.starts())).isEmpty();
    }
  }

  private static long bruteForceMirrored(Network turned) {
    long[] shifted = new long[STAGES];
    return bruteForce(turned, shifted, 0, Long.MAX_VALUE);
  }

  private static long bruteForce(Network network, long[] starts, int next, long best) {
    if (next == STAGES) {
      return violations(network, starts).isEmpty() ? network.finish(starts) : Long.MAX_VALUE;
    }
    long found = best;
    for (long time = network.notBefore(next); time <= network.notAfter(next); time++) {
      starts[next] = time;
      if (time + network.length(next) < found && linksHold(network, starts, next)) {
        found = Math.min(found, bruteForce(network, starts, next + 1, found));
      }
    }
    return found;
  }

  private static boolean linksHold(Network network, long[] starts, int last) {
    return network.links().stream()
        .filter(link -> link.from() <= last && link.to() <= last)
        .allMatch(link -> starts[link.to()] - starts[link.from()] >= link.lag());
  }

  /** What a plan breaks, in words; written apart from what makes plans. */
  static List<String> violations(Network network, long[] starts) {
    List<String> broken = new ArrayList<>();
    for (Link link : network.links()) {
      if (starts[link.to()] - starts[link.from()] < link.lag()) {
        broken.add(link + " in " + Arrays.toString(starts));
      }
    }
    for (int i = 0; i < network.size(); i++) {
      if (starts[i] < network.notBefore(i) || starts[i] > network.notAfter(i)) {
        broken.add("bounds of " + i);
      }
      long end = starts[i] + network.length(i);
      long from = starts[i];
      boolean moment = end == from; // touching a shift is enough for what takes no time
      long needed = moment ? 1 : end - from;
      if (network.attended(i)
          && network.working().between(moment ? from - 1 : from, moment ? end + 1 : end) < needed) {
        broken.add("shift of " + i);
      }
    }
    for (Pool pool : network.pools()) {
      for (int i : pool.members()) {
        long together =
            pool.members().stream()
                .filter(k -> network.length(k) > 0 && network.length(i) > 0)
                .filter(k -> starts[k] <= starts[i] && starts[i] < starts[k] + network.length(k))
                .count();
        if (together > pool.capacity()) {
          broken.add(pool.name() + " at " + starts[i]);
        }
      }
    }
    return broken;
  }
}
