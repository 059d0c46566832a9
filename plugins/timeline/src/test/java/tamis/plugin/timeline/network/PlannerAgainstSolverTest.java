package tamis.plugin.timeline.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solution;
import org.chocosolver.solver.variables.IntVar;
import org.chocosolver.solver.variables.Task;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Plans of a dozen stages, held against a general constraint solver that proves its optimum. */
class PlannerAgainstSolverTest {
  private static final int STAGES = 12;

  static LongStream seeds() {
    return LongStream.range(0, 40);
  }

  private static Network network(long seed) {
    Random random = new Random(seed);
    long[] lengths = random.longs(STAGES, 1, 13).toArray();
    List<Link> links = new ArrayList<>();
    List<List<Integer>> members = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    for (int i = 0; i < STAGES; i++) {
      for (List<Integer> pool : members) {
        if (random.nextInt(5) < 2) {
          pool.add(i);
        }
      }
      for (int before = 0; before < i; before++) {
        if (random.nextInt(6) == 0) {
          links.add(new Link(before, i, lengths[before]));
          if (random.nextInt(3) == 0) {
            links.add(new Link(i, before, -lengths[before] - random.nextInt(8)));
          }
        }
      }
    }
    long[] late = new long[STAGES];
    Arrays.fill(late, 200);
    return new Network(
        lengths,
        new long[STAGES],
        late,
        new boolean[STAGES],
        WorkingTime.always(),
        links,
        List.of(
            new Pool("oven", 1, members.get(0)),
            new Pool("mixer", 1, members.get(1)),
            new Pool("hands", 2, members.get(2))));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void both_find_the_same_end(long seed) {
    Network network = network(seed);
    Outcome outcome = Planner.thorough().earliest(network);
    Integer proven = solved(network);
    if (proven == null) {
      assertThat(outcome).isNull();
    } else {
      assertThat(outcome).isNotNull();
      assertThat(outcome.isBest()).isTrue();
      assertThat(network.finish(outcome.starts())).isEqualTo((long) proven);
      assertThat(PlannerTest.violations(network, outcome.starts())).isEmpty();
    }
  }

  private static Integer solved(Network network) {
    Model model = new Model();
    int horizon = 250;
    IntVar end = model.intVar("end", 0, horizon);
    IntVar[] starts = model.intVarArray("start", STAGES, 0, 200);
    Task[] tasks = new Task[STAGES];
    for (int i = 0; i < STAGES; i++) {
      IntVar finish = model.intVar("finish" + i, 0, horizon);
      tasks[i] = new Task(starts[i], model.intVar((int) network.length(i)), finish);
      model.arithm(end, ">=", finish).post();
    }
    for (Link link : network.links()) {
      model.arithm(starts[link.to()], "-", starts[link.from()], ">=", (int) link.lag()).post();
    }
    for (Pool pool : network.pools()) {
      Task[] of = pool.members().stream().map(i -> tasks[i]).toArray(Task[]::new);
      IntVar[] one = pool.members().stream().map(i -> model.intVar(1)).toArray(IntVar[]::new);
      model.cumulative(of, one, model.intVar(pool.capacity())).post();
    }
    Solution best = model.getSolver().findOptimalSolution(end, Model.MINIMIZE);
    return best == null ? null : best.getIntVal(end);
  }
}
