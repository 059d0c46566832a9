package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;

/** Which bounds stop a mix, and what relaxing each of them would give. */
final class Relaxing {
  /** Each asks for a programme to be solved anew; of the ingredients' own bounds so many are. */
  private static final int MOST_SINGLE = 10;

  /** Part of a unit by which the shadow price is found, so that it is that of the bound itself. */
  private static final double CLOSE = 0.01;

  /** Smaller gains are noise of the solution. */
  private static final double NOISE = 1e-10;

  private final Limits limits;
  private final Goal goal;
  private final Solver solver;
  private final Notes notes;

  Relaxing(Limits limits, Goal goal, Solver solver, Notes notes) {
    this.limits = limits;
    this.goal = goal;
    this.solver = solver;
    this.notes = notes;
  }

  List<BindingBound> binding(double value, double[] shares) {
    List<BindingBound> binding = new ArrayList<>();
    int left = 0;
    int single = 0;
    for (Limit limit : limits.all()) {
      if (!limit.isTouched(shares)) {
        continue;
      }
      single += limit.single() >= 0 ? 1 : 0;
      boolean oneOfMany = limit.single() >= 0 && single > MOST_SINGLE;
      if (oneOfMany || 2 * binding.size() >= solver.most()) {
        left++;
        continue;
      }
      @Nullable BindingBound one = relaxed(limit, value);
      if (one != null) {
        binding.add(one);
      }
    }
    if (left > 0) {
      notes.remark(
          "more-binding", "/ingredients", left + " bounds more are touched and not listed");
    }
    binding.sort(Comparator.comparingDouble((BindingBound one) -> -one.gain()));
    return binding;
  }

  /** What relaxing a bound by one unit gives, worked out anew; null if it cannot be relaxed. */
  private @Nullable BindingBound relaxed(Limit limit, double value) {
    Limit other = limit.relaxedBy(limit.step());
    double by = limit.side() == Side.LOW ? Math.min(limit.step(), limit.limit()) : limit.step();
    if (by == 0) {
      return null;
    }
    Programme.Ending then = solver.best(with(limit, other));
    boolean own = limit.single() >= 0;
    double near = own ? by : by * CLOSE;
    Programme.Ending close = own ? then : solver.best(with(limit, limit.relaxedBy(near)));
    if (!then.isSolved() || !close.isSolved()) {
      return null;
    }
    double sign = goal.isMost() ? 1 : -1;
    double gain = cleaned(sign * (then.value() - value));
    double shownBy = Words.plain(limits.shown(limit, by));
    double price = cleaned(sign * (close.value() - value)) / limits.shown(limit, near);
    String words =
        gain == 0
            ? "relaxing `"
                + limits.told(limit)
                + "` by "
                + Words.amount(shownBy, limit.unit())
                + " gives nothing"
            : "relaxing `"
                + limits.told(limit)
                + "` by "
                + Words.amount(shownBy, limit.unit())
                + " would give "
                + Words.amount(gain, goal.unit())
                + " "
                + (goal.isMost() ? "more" : "less");
    return new BindingBound(
        limits.told(limit),
        limit.pointer(),
        limit.side(),
        Words.plain(limits.shown(limit, limit.limit())),
        limit.unit(),
        shownBy,
        Words.plain(then.value()),
        Words.plain(gain),
        Words.plain(price),
        words);
  }

  private List<Limit> with(Limit limit, Limit other) {
    return limits.all().stream().map(one -> one.equals(limit) ? other : one).toList();
  }

  private static double cleaned(double gain) {
    return gain < NOISE ? 0 : gain;
  }
}
