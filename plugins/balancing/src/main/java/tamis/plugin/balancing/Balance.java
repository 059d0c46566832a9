package tamis.plugin.balancing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Spread;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/** Works out one mix. */
final class Balance {
  /** Below this a bound counts as touched: far finer than any scale or analysis. */
  private static final double TOUCHED = 1e-6;

  /** Each asks for a programme to be solved anew; of the ingredients' own bounds so many are. */
  private static final int MOST_SINGLE = 10;

  /** Part of a unit by which the shadow price is found, so that it is that of the bound itself. */
  private static final double CLOSE = 0.01;

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
      if (limit.slack(shares) < -TOUCHED * 10 * size) {
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
        figures(shares, all),
        cost,
        perKilogram,
        binding(value, shares));
  }

  private MixLine line(int i, double[] shares, double all) {
    Mixed mixed = mix.items().get(i);
    double grams = shares[i] * limits.reference();
    @Nullable Side bound = null;
    for (Limit limit : limits.all()) {
      if (limit.single() == i && isTouched(limit, shares)) {
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

  private static boolean isTouched(Limit limit, double[] shares) {
    return Math.abs(limit.slack(shares)) <= TOUCHED * Math.max(1, Math.abs(limit.limit()));
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

  private List<MixFigure> figures(double[] shares, double all) {
    Map<String, Property> shown = new LinkedHashMap<>();
    input.bounds().forEach(bound -> shown.put(bound.property(), Property.of(bound.property())));
    if (input.of() != null) {
      shown.putIfAbsent(input.of(), Property.of(input.of()));
    }
    Set<String> asked = new LinkedHashSet<>(shown.keySet());
    Property.USUAL.forEach(usual -> shown.putIfAbsent(usual.name(), usual));
    List<MixFigure> figures = new ArrayList<>();
    for (Property property : shown.values()) {
      @Nullable Spread amount = amount(property, shares);
      if (property.name().equals(Property.SWEETNESS) && amount != null) {
        for (Row row : Sweetness.TABLE.rows()) {
          notes.cite(row, "/properties/" + figures.size() + "/value");
        }
      }
      boolean bound = false;
      for (MixBound one : input.bounds()) {
        if (one.property().equals(property.name())) {
          figures.add(figure(property, one, amount, all, shares));
          bound = true;
        }
      }
      if (!bound && (amount != null || asked.contains(property.name()))) {
        figures.add(figure(property, null, amount, all, shares));
      }
    }
    return figures;
  }

  /** For a share of one that is 100 g, or null if it is not known of all that goes in. */
  private @Nullable Spread amount(Property property, double[] shares) {
    Spread sum = Spread.zero();
    for (int i = 0; i < shares.length; i++) {
      @Nullable Spread one = mix.items().get(i).of(property);
      if (one == null && shares[i] > 0) {
        return null;
      }
      sum = one == null ? sum : sum.plus(one.times(shares[i]));
    }
    return sum;
  }

  private MixFigure figure(
      Property property,
      @Nullable MixBound bound,
      @Nullable Spread amount,
      double all,
      double[] shares) {
    boolean whole = bound != null && bound.isWhole();
    @Nullable Spread value =
        amount == null ? null : amount.times(whole ? limits.reference() / 100 : 1 / all);
    @Nullable Double target = bound == null ? null : bound.target();
    boolean spread = value != null && !value.isExact();
    @Nullable Side at = null;
    for (Limit limit : limits.all()) {
      boolean ofThis =
          bound != null
              && limit.single() < 0
              && limit.pointer().startsWith("/bounds/" + input.bounds().indexOf(bound) + "/");
      at = ofThis && isTouched(limit, shares) ? limit.side() : at;
    }
    return new MixFigure(
        property.name(),
        whole ? property.unit() : property.per100(),
        value == null ? null : (Double) Words.plain(value.typical()),
        spread && value != null ? (Double) Words.plain(value.low()) : null,
        spread && value != null ? (Double) Words.plain(value.high()) : null,
        bound == null ? null : bound.low(),
        bound == null ? null : bound.high(),
        target,
        value == null || target == null ? null : (Double) Words.plain(value.typical() - target),
        at);
  }

  private List<BindingBound> binding(double value, double[] shares) {
    List<BindingBound> binding = new ArrayList<>();
    int left = 0;
    int single = 0;
    for (Limit limit : limits.all()) {
      if (!isTouched(limit, shares)) {
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
    return gain < 1e-10 ? 0 : gain;
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
