package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How what is needed of a formula is made in batches: least over the need, then fewest batches,
 * then of even size. Machines to choose from have a least and a most; with whole eggs every batch
 * is a whole number of steps. All choices of how many batches on which machine are tried, largest
 * first, branches that cannot be better are left out; after a fixed number of steps the best so far
 * stands and says how much better another could be.
 *
 * @param loads the batches
 * @param made what they come to
 * @param best whether nothing less could be made
 * @param gap how much less could be made at most
 */
record BatchPlan(List<Load> loads, double made, boolean best, double gap) {
  private static final int MOST_STEPS = 50_000;

  /** Amounts that differ by less are the same but for rounding. */
  private static final double SAME = 1e-9;

  int batches() {
    return loads.stream().mapToInt(Load::number).sum();
  }

  /** A machine, or the bench where there is none. */
  record Machine(@Nullable String name, double least, double most) {}

  /** So many batches of one size. */
  record Load(@Nullable String machine, double size, int number) {}

  /**
   * @param need more than 0
   * @param machines at least one; none with a least above its most
   * @param step every batch is a multiple of it; 0 if any size will do
   * @return null if no machine takes a single step
   */
  static @Nullable BatchPlan of(double need, List<Machine> machines, double step) {
    double unit = step > 0 ? step : 1;
    double wanted = step > 0 ? Math.ceil(need / step - SAME) : need;
    List<Machine> usable = new ArrayList<>();
    for (Machine machine : machines) {
      double least = machine.least() / unit;
      double most = machine.most() / unit;
      if (step > 0) {
        least = Math.max(1, Math.ceil(least - SAME));
        most = Math.floor(most + SAME);
      }
      most = Double.isInfinite(most) ? Math.max(wanted, least) : most;
      if (most > 0 && least <= most) {
        usable.add(new Machine(machine.name(), least, most));
      }
    }
    if (usable.isEmpty()) {
      return null;
    }
    usable.sort(Comparator.comparingDouble(Machine::most).reversed());
    Search search = new Search(usable, wanted);
    search.from(0, 0, 0, 0);
    double made = Math.max(wanted, search.least(search.best));
    return new BatchPlan(
        loads(usable, search.best, made, step > 0, unit),
        step > 0 ? made * unit : made,
        search.steps < MOST_STEPS || made <= wanted,
        search.steps < MOST_STEPS ? 0 : (made - wanted) * unit);
  }

  /** Tries how many batches each machine makes. */
  private static final class Search {
    private final List<Machine> machines;
    private final double need;
    private final int[] now;
    private int[] best;
    private double bestMade = Double.POSITIVE_INFINITY;
    private int bestBatches = Integer.MAX_VALUE;
    private int steps;

    Search(List<Machine> machines, double need) {
      this.machines = machines;
      this.need = need;
      this.now = new int[machines.size()];
      this.best = new int[machines.size()];
    }

    double least(int[] numbers) {
      double least = 0;
      for (int i = 0; i < numbers.length; i++) {
        least += numbers[i] * machines.get(i).least();
      }
      return least;
    }

    void from(int machine, double least, double most, int batches) {
      steps++;
      if (most >= need - SAME * Math.max(1, need)) {
        double made = Math.max(need, least);
        boolean less = made < bestMade - SAME;
        if (batches > 0 && (less || (made <= bestMade + SAME && batches < bestBatches))) {
          bestMade = made;
          bestBatches = batches;
          best = now.clone();
        }
        return;
      }
      if (machine == machines.size() || (steps >= MOST_STEPS && bestBatches < Integer.MAX_VALUE)) {
        return;
      }
      Machine here = machines.get(machine);
      double room = Math.ceil((need - most) / here.most() - SAME);
      int top = (int) Math.max(0, Math.min(Integer.MAX_VALUE / 2.0, room));
      // Fewer on the last machine would not be enough.
      int fewest = machine == machines.size() - 1 ? top : 0;
      for (int number = top; number >= fewest; number--) {
        double atLeast = least + number * here.least();
        boolean worse = Math.max(need, atLeast) > bestMade + SAME;
        boolean couldBeLess = bestMade > need + SAME;
        if (!worse && (couldBeLess || batches + number <= bestBatches)) {
          now[machine] = number;
          from(machine + 1, atLeast, most + number * here.most(), batches + number);
        }
        if (steps >= MOST_STEPS && bestBatches < Integer.MAX_VALUE) {
          break;
        }
      }
      now[machine] = 0;
    }
  }

  /** Every machine is filled to the same part of what lies between its least and its most. */
  private static List<Load> loads(
      List<Machine> machines, int[] numbers, double made, boolean whole, double unit) {
    double least = 0;
    double room = 0;
    for (int i = 0; i < numbers.length; i++) {
      Machine machine = machines.get(i);
      least += numbers[i] * machine.least();
      double most = Math.min(machine.most(), made);
      room += numbers[i] * Math.max(0, most - machine.least());
    }
    double part = room <= 0 ? 0 : (made - least) / room;
    double rest = made;
    List<Load> loads = new ArrayList<>();
    int[] extra = whole ? new int[numbers.length] : null;
    double[] sizes = new double[numbers.length];
    for (int i = 0; i < numbers.length; i++) {
      Machine machine = machines.get(i);
      double most = Math.min(machine.most(), made);
      double size = machine.least() + part * Math.max(0, most - machine.least());
      sizes[i] = whole ? Math.floor(size + SAME) : size;
      rest -= numbers[i] * sizes[i];
    }
    for (int i = 0; extra != null && i < numbers.length; i++) {
      boolean grows = sizes[i] + 1 <= machines.get(i).most() + SAME;
      extra[i] = grows ? (int) Math.min(numbers[i], Math.max(0, Math.rint(rest))) : 0;
      rest -= extra[i];
    }
    for (int i = 0; i < numbers.length; i++) {
      int more = extra == null ? 0 : extra[i];
      add(loads, machines.get(i).name(), (sizes[i] + 1) * unit, more);
      add(loads, machines.get(i).name(), sizes[i] * unit, numbers[i] - more);
    }
    return loads;
  }

  private static void add(List<Load> loads, @Nullable String machine, double size, int number) {
    if (number > 0) {
      loads.add(new Load(machine, size, number));
    }
  }
}
