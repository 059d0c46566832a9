package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A smallest set of bounds that exclude each other: without any one of them the others can be kept.
 * Found by halving (Junker 2004), which asks for few solutions even among thousands of bounds.
 */
final class Conflict {
  private static final int MOST_TOLD = 20;
  private static final double FULL = 1e-9;

  private final Solver solver;
  private final Limits limits;
  private int asked;

  Conflict(Solver solver, Limits limits) {
    this.solver = solver;
    this.limits = limits;
  }

  List<Limit> smallest() {
    List<Limit> room = room();
    return room.isEmpty() ? smallest(List.of(), false, limits.all()) : room;
  }

  /** Whether it is smallest, or the search was cut short. */
  private boolean isSmallest() {
    return asked < solver.most();
  }

  /** Lowest masses that come to more than the mix: the largest of them, until they do. */
  private List<Limit> room() {
    List<Limit> lows = new ArrayList<>();
    for (Limit limit : limits.all()) {
      if (limit.single() >= 0 && !limit.relative() && limit.side() == Side.LOW) {
        lows.add(limit);
      }
    }
    lows.sort(Comparator.comparingDouble((Limit one) -> -one.limit()));
    double sum = 0;
    for (int i = 0; i < lows.size() && limits.isFixed(); i++) {
      sum += lows.get(i).limit();
      if (sum > 1 + FULL) {
        return lows.subList(0, i + 1);
      }
    }
    return List.of();
  }

  private List<Limit> smallest(List<Limit> kept, boolean grown, List<Limit> open) {
    if (grown && isSmallest()) {
      asked++;
      if (!solver.isFeasible(kept)) {
        return List.of();
      }
    }
    if (open.size() <= 1 || !isSmallest()) {
      return open;
    }
    int half = open.size() / 2;
    List<Limit> first = open.subList(0, half);
    List<Limit> second = open.subList(half, open.size());
    List<Limit> ofSecond = smallest(joined(kept, first), true, second);
    List<Limit> ofFirst = smallest(joined(kept, ofSecond), !ofSecond.isEmpty(), first);
    return joined(ofFirst, ofSecond);
  }

  private static List<Limit> joined(List<Limit> one, List<Limit> other) {
    List<Limit> all = new ArrayList<>(one);
    all.addAll(other);
    return all;
  }

  /** One fault for each bound of the set. */
  Refusal refusal() {
    List<Limit> set = smallest();
    List<Fault> faults = new ArrayList<>();
    String mass =
        limits.isFixed() ? " in " + Words.amount(limits.reference(), "g") + " of the mix" : "";
    for (Limit limit : set.subList(0, Math.min(MOST_TOLD, set.size()))) {
      String others =
          set.stream()
              .filter(one -> !one.equals(limit))
              .limit(MOST_TOLD)
              .map(limits::told)
              .collect(Collectors.joining(", "));
      String why =
          others.isEmpty()
              ? " cannot be kept by any mix of these ingredients" + mass
              : " cannot be kept together with "
                  + others
                  + (set.size() - 1 > MOST_TOLD
                      ? " and " + (set.size() - 1 - MOST_TOLD) + " more"
                      : "")
                  + (isSmallest() ? "" : ", not all of which may be needed for that,")
                  + mass;
      faults.add(
          new Fault(
              FaultCode.IMPOSSIBLE,
              limit.pointer(),
              limits.told(limit),
              null,
              "`" + limits.told(limit) + "`" + why + alone(limit)));
    }
    return faults.isEmpty()
        ? Refusal.of(FaultCode.IMPOSSIBLE, "/mass", "no mix can be made of these ingredients")
        : new Refusal(faults);
  }

  private String alone(Limit limit) {
    boolean exact = (limits.isFixed() || !limit.relative()) && isSmallest();
    @Nullable Double by = exact ? solver.givingWay(limit, limits.all()) : null;
    if (by == null) {
      return "";
    }
    boolean low = limit.side() == Side.LOW;
    double to = Math.max(0, limit.limit() + (low ? -by : by));
    return "; with all else as it is it would have to be "
        + Words.amount(limits.shown(limit, to), limit.unit())
        + (low ? " or less" : " or more");
  }
}
