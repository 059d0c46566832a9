package tamis.plugin.balancing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/** Works out one mix. */
final class Balance {
  private final Balancing.Input input;
  private final Notes notes = new Notes();
  private final Mix mix;
  private final Limits limits;
  private final Goal goal;
  private final Solver solver;

  Balance(Balancing.Input input, Kitchen kitchen) {
    this.input = input;
    this.mix = new Mix(input, kitchen, notes);
    this.limits = new Limits(input, mix);
    this.goal = new Goal(input, mix, limits);
    this.solver = new Solver(mix, limits, goal);
  }

  Answer<Balancing.Result> answer() {
    Programme.Ending best = solver.best(limits.all());
    if (best.unbounded()) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          "/mass",
          "there is no end to it: "
              + String.join(", ", solver.endless(limits.all()))
              + " could go in without limit; give `mass`, or a bound that holds it");
    }
    if (!best.isSolved()) {
      throw new Conflict(solver, limits).refusal();
    }
    double value = best.value();
    if (input.aimed() == Balancing.Aim.NEAREST && mix.isPriced()) {
      best = solver.cheapest(limits.all(), best);
    }
    double[] shares = shares(best);
    Balancing.Result result = result(value, shares);
    remarks(result);
    return Answer.of(result, notes);
  }

  private double[] shares(Programme.Ending best) {
    double[] values = best.values();
    double[] shares = new double[mix.size()];
    for (int i = 0; i < shares.length && values != null; i++) {
      shares[i] = Math.rint(values[i] * 1e12) / 1e12;
    }
    for (Limit limit : limits.all()) {
      double size = Math.max(1, Math.abs(limit.limit()));
      if (limit.slack(shares) < -Limit.TOUCHED * 10 * size) {
        throw Refusal.of(
            FaultCode.IMPOSSIBLE,
            limit.pointer(),
            "the figures are too far apart in size to be balanced: `"
                + limits.told(limit)
                + "` is missed by rounding");
      }
    }
    return shares;
  }

  private Balancing.Result result(double value, double[] shares) {
    double all = 0;
    for (double share : shares) {
      all += share;
    }
    all = limits.isFixed() ? 1 : all;
    List<MixLine> lines = new ArrayList<>();
    for (int i = 0; i < shares.length; i++) {
      lines.add(line(i, shares, all));
    }
    double grams = all * limits.reference();
    @Nullable BigDecimal exact = cost(shares);
    @Nullable Money cost = money(exact);
    @Nullable Money perKilogram =
        exact == null ? null : money(BigDecimal.valueOf(exact.doubleValue() / grams * 1000));
    return new Balancing.Result(
        input.aimed(),
        goal.words(),
        Words.plain(value),
        goal.unit(),
        Words.plain(grams),
        lines,
        new Reached(input, mix, limits, notes).figures(shares, all),
        cost,
        perKilogram,
        new Relaxing(limits, goal, solver, notes).binding(value, shares));
  }

  private MixLine line(int i, double[] shares, double all) {
    Mixed mixed = mix.items().get(i);
    double grams = shares[i] * limits.reference();
    @Nullable Side bound = null;
    for (Limit limit : limits.all()) {
      if (limit.single() == i && limit.isTouched(shares)) {
        bound = limit.side();
      }
    }
    cite(mixed, i);
    return new MixLine(
        mixed.id(),
        mixed.title(),
        Words.plain(grams),
        Words.plain(shares[i] / all * 100),
        bound,
        mix.currency() == null ? null : money(mixed.cost(grams)));
  }

  private void cite(Mixed mixed, int i) {
    @Nullable Row row =
        mixed.ingredient() == null ? null : IngredientTables.INGREDIENTS.row(mixed.id());
    if (row != null) {
      notes.cite(row, "/lines/" + i);
    }
  }

  private @Nullable BigDecimal cost(double[] shares) {
    BigDecimal sum = BigDecimal.ZERO;
    for (int i = 0; i < shares.length; i++) {
      @Nullable BigDecimal cost = mix.items().get(i).cost(shares[i] * limits.reference());
      if (cost == null && shares[i] > 0) {
        return null;
      }
      sum = cost == null ? sum : sum.add(cost);
    }
    return mix.currency() == null ? null : sum;
  }

  private @Nullable Money money(@Nullable BigDecimal amount) {
    return amount == null || mix.currency() == null
        ? null
        : new Money(amount.setScale(9, RoundingMode.HALF_UP), mix.currency())
            .rounded(RoundingMode.HALF_UP);
  }

  private void remarks(Balancing.Result result) {
    if (input.mass() == null && limits.isFixed()) {
      notes.remark("mass-assumed", "/mass", "1 kg is made; give `mass` for another size");
    }
    if (result.cost() == null) {
      notes.remark(
          "cost-not-known",
          "/ingredients",
          "a price is missing, or prices are of several currencies: the cost is not known");
    }
    boolean spread = result.properties().stream().anyMatch(one -> one.valueLow() != null);
    if (spread) {
      notes.estimate(
          "sweetness-differs",
          "/bounds",
          "published lists of relative sweetness differ, and cold, acid and mixtures shift it;"
              + " taste before a large batch");
    }
    notes.caution(
        "mix-on-paper",
        "",
        "Balanced on paper: texture, keeping, safety and allergens of the mix are not judged here.");
  }
}
