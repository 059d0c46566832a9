package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.Offer;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;

/**
 * The money in each stage, in the order of work. What an ingredient costs is spent where it goes
 * in; packaging in the last stage.
 */
final class RiskTable {
  private final List<StageWork> work;
  private final StageCosts costs;
  private final Map<StageWork, BigDecimal> amounts = new LinkedHashMap<>();

  private RiskTable(List<StageWork> work, StageCosts costs) {
    this.work = work;
    this.costs = costs;
  }

  /**
   * @param perIngredient exact cost and grams of each ingredient of the bill
   * @param total exact total; the last stage takes what division left over
   */
  static RiskTable of(
      List<StageWork> work,
      StageCosts costs,
      Map<Ingredient, BigDecimal> perIngredient,
      Map<Ingredient, Double> grams,
      BigDecimal total,
      Rates rates) {
    RiskTable table = new RiskTable(work, costs);
    BigDecimal rest = total;
    for (int i = 0; i < work.size(); i++) {
      StageWork stage = work.get(i);
      BigDecimal amount = rest;
      if (i < work.size() - 1) {
        amount = costs.labour(stage, rates).add(costs.energy(stage, rates));
        for (Map.Entry<Ingredient, Double> added : stage.grams().entrySet()) {
          amount = amount.add(part(added.getKey(), added.getValue(), perIngredient, grams));
        }
      }
      table.amounts.put(stage, amount);
      rest = rest.subtract(amount);
    }
    return table;
  }

  private static BigDecimal part(
      Ingredient ingredient,
      double added,
      Map<Ingredient, BigDecimal> perIngredient,
      Map<Ingredient, Double> grams) {
    @Nullable BigDecimal cost = perIngredient.get(ingredient);
    double all = grams.getOrDefault(ingredient, 0.0);
    return cost == null || all <= 0
        ? BigDecimal.ZERO
        : cost.multiply(BigDecimal.valueOf(added), Offer.DIGITS)
            .divide(BigDecimal.valueOf(all), Offer.DIGITS);
  }

  List<StageRisk> rows(Rates rates) {
    Shares shares = Shares.of(new ArrayList<>(amounts.values()), rates.currency());
    List<BitSet> lost = lost();
    List<Double> finish = finish();
    List<StageRisk> rows = new ArrayList<>();
    Money spent = Money.zero(rates.currency());
    for (int i = 0; i < work.size(); i++) {
      StageWork stage = work.get(i);
      Money added = shares.parts().get(i);
      spent = spent.plus(added);
      boolean timed = lost.get(i).stream().allMatch(one -> work.get(one).minutes() != null);
      boolean handsTimed =
          lost.get(i).stream().allMatch(one -> costs.restartHands(work.get(one)) != null);
      boolean root = stage.part().path().isEmpty();
      rows.add(
          new StageRisk(
              stage.id(),
              root ? null : stage.partName(),
              stage.part().path(),
              stage.stage() == null ? null : stage.stage().title(),
              stage.minutes(),
              added,
              spent,
              shares.total().minus(spent),
              restart(lost.get(i), shares),
              timed ? finish.get(i) : null,
              handsTimed ? (Double) hands(lost.get(i)) : null));
    }
    return rows;
  }

  /** Of what is shown as added, so that where all is lost it is what was spent. */
  private static Money restart(BitSet lost, Shares shares) {
    Money restart = Money.zero(shares.total().currency());
    for (int one = lost.nextSetBit(0); one >= 0; one = lost.nextSetBit(one + 1)) {
      restart = restart.plus(shares.parts().get(one));
    }
    return restart;
  }

  private double hands(BitSet lost) {
    return lost.stream()
        .mapToObj(one -> costs.restartHands(work.get(one)))
        .mapToDouble(minutes -> minutes == null ? 0 : minutes)
        .sum();
  }

  /** Of each stage itself and all that went into it; those stand before it in the work. */
  private List<BitSet> lost() {
    Map<StageWork, Integer> places = new HashMap<>();
    List<BitSet> lost = new ArrayList<>();
    for (int i = 0; i < work.size(); i++) {
      BitSet here = new BitSet();
      here.set(i);
      for (StageWork earlier : work.get(i).before()) {
        here.or(lost.get(places.getOrDefault(earlier, i)));
      }
      places.put(work.get(i), i);
      lost.add(here);
    }
    return lost;
  }

  /** Minutes from the start of its first part until each stage is done, parts side by side. */
  private List<Double> finish() {
    Map<StageWork, Double> done = new HashMap<>();
    List<Double> finish = new ArrayList<>();
    for (StageWork stage : work) {
      double start =
          stage.before().stream().mapToDouble(one -> done.getOrDefault(one, 0.0)).max().orElse(0);
      double end = start + (stage.minutes() == null ? 0 : stage.minutes());
      done.put(stage, end);
      finish.add(end);
    }
    return finish;
  }
}
