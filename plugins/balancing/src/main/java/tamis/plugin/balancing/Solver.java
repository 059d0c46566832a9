package tamis.plugin.balancing;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Sets programmes up from limits and solves them. */
final class Solver {
  /** A mix is something: a gram at least, where its mass is free. */
  private static final double A_GRAM = 1;

  /** Of mixes that are alike to this part, the cheapest is taken. */
  private static final double ALIKE = 1e-7;

  private static final int WORK = 20_000;
  private static final int LEAST_SOLVED = 20;

  private final Mix mix;
  private final Limits limits;
  private final Goal goal;

  Solver(Mix mix, Limits limits, Goal goal) {
    this.mix = mix;
    this.limits = limits;
    this.goal = goal;
  }

  /** How many programmes of this size may be solved for one answer: the larger, the fewer. */
  int most() {
    return Math.max(LEAST_SOLVED, WORK / mix.size());
  }

  Programme.Ending best(List<Limit> kept) {
    Programme programme = new Programme(goal.factors(), goal.isMost());
    addAll(programme, kept);
    goal.addTargets(programme);
    return programme.solve();
  }

  /**
   * The cheapest of all mixes that are as good as this one; the same one if there is no cheaper.
   */
  Programme.Ending cheapest(List<Limit> kept, Programme.Ending as) {
    double[] factors = goal.factors();
    double[] costs = Arrays.copyOf(mix.costs(), factors.length);
    Programme programme = new Programme(costs, false);
    addAll(programme, kept);
    goal.addTargets(programme);
    programme.add(factors, Relation.AT_MOST, as.value() + ALIKE);
    Programme.Ending cheapest = programme.solve();
    return cheapest.isSolved() ? cheapest : as;
  }

  boolean isFeasible(Collection<Limit> kept) {
    Programme programme = new Programme(new double[mix.size()], false);
    addAll(programme, kept);
    return programme.solve().isSolved();
  }

  /** How far this limit alone would have to give way, all others kept; null if that is no help. */
  @Nullable Double givingWay(Limit limit, List<Limit> all) {
    int size = mix.size();
    double[] only = new double[size + 1];
    only[size] = 1;
    Programme programme = new Programme(only, false);
    addAll(programme, all.stream().filter(one -> !one.equals(limit)).toList());
    double[] row = Arrays.copyOf(new Programme(new double[size], false).factors(limit), size + 1);
    row[size] = limit.side() == Side.LOW ? 1 : -1;
    programme.add(row, Programme.relation(limit), limit.right());
    Programme.Ending ending = programme.solve();
    return ending.isSolved() ? (Double) ending.value() : null;
  }

  /** What grows without end: the ingredients of a mix that is kept below a very large mass. */
  List<String> endless(List<Limit> kept) {
    double most = 1e6;
    double[] factors = goal.factors();
    Programme programme = new Programme(factors, goal.isMost());
    addAll(programme, kept);
    goal.addTargets(programme);
    double[] all = new double[factors.length];
    Arrays.fill(all, 0, mix.size(), 1);
    programme.add(all, Relation.AT_MOST, most);
    double[] values = programme.solve().values();
    if (values == null) {
      return List.of();
    }
    return IntStream.range(0, mix.size())
        .filter(i -> values[i] > most / (10.0 * mix.size()))
        .mapToObj(i -> mix.items().get(i).id())
        .toList();
  }

  private void addAll(Programme programme, Collection<Limit> kept) {
    kept.forEach(programme::add);
    double[] all = new double[programme.size()];
    Arrays.fill(all, 0, mix.size(), 1);
    programme.add(
        all,
        limits.isFixed() ? Relation.EQUAL : Relation.AT_LEAST,
        limits.isFixed() ? 1 : A_GRAM / limits.reference());
  }
}
