package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Money;

/** All bounds of a request as limits on shares of its reference mass. */
final class Limits {
  private static final double KILOGRAM = 1_000;

  private final Mix mix;
  private final double reference;
  private final boolean fixed;
  private final List<Limit> limits = new ArrayList<>();

  Limits(Balancing.Input input, Mix mix) {
    this.mix = mix;
    Mass mass = input.mass();
    this.fixed = mass != null || input.bounds().stream().noneMatch(MixBound::isWhole);
    this.reference = mass == null ? KILOGRAM : mass.grams();
    for (int i = 0; i < input.bounds().size(); i++) {
      ofBound(input.bounds().get(i), "/bounds/" + i);
    }
    Money most = input.costAtMost();
    if (most != null) {
      double cost = most.amount().doubleValue();
      String unit = most.currency() + "/kg";
      limits.add(
          new Limit(
              "cost at most", "/costAtMost", Side.HIGH, cost, mix.costs(), true, unit, 1, -1));
    }
    for (int i = 0; i < mix.size(); i++) {
      ofItem(i);
    }
  }

  /** Grams that a share of one is. */
  double reference() {
    return reference;
  }

  /** Whether the shares add up to one, or to anything. */
  boolean isFixed() {
    return fixed;
  }

  List<Limit> all() {
    return limits;
  }

  private void ofBound(MixBound bound, String at) {
    Property property = Property.of(bound.property());
    double[] amounts = mix.amounts(bound.property());
    String unit = bound.isWhole() ? property.unit() : property.per100();
    double[] counted = bound.isWhole() ? times(amounts, reference / 100) : amounts;
    boolean relative = !bound.isWhole();
    String what = bound.property() + (bound.isWhole() ? " in all" : "");
    if (bound.low() != null) {
      limits.add(
          new Limit(
              what + " at least",
              at + "/low",
              Side.LOW,
              bound.low(),
              counted,
              relative,
              unit,
              1,
              -1));
    }
    if (bound.high() != null) {
      limits.add(
          new Limit(
              what + " at most",
              at + "/high",
              Side.HIGH,
              bound.high(),
              counted,
              relative,
              unit,
              1,
              -1));
    }
  }

  static double[] times(double[] amounts, double factor) {
    return Arrays.stream(amounts).map(amount -> amount * factor).toArray();
  }

  private void ofItem(int i) {
    MixItem item = mix.items().get(i).item();
    mass(i, "/low", Side.LOW, item.low());
    mass(i, "/high", Side.HIGH, item.high());
    percent(i, "/lowPercent", Side.LOW, item.lowPercent());
    percent(i, "/highPercent", Side.HIGH, item.highPercent());
  }

  private String words(int i, Side side) {
    return mix.items().get(i).id() + (side == Side.LOW ? " at least" : " at most");
  }

  private void mass(int i, String name, Side side, @Nullable Mass mass) {
    if (mass != null) {
      limits.add(single(i, name, side, mass.grams() / reference, "g"));
    }
  }

  private void percent(int i, String name, Side side, @Nullable Double percent) {
    if (percent == null) {
      return;
    }
    if (fixed) {
      limits.add(single(i, name, side, percent / 100, "%"));
      return;
    }
    double[] amounts = new double[mix.size()];
    amounts[i] = 100;
    limits.add(
        new Limit(
            words(i, side), "/ingredients/" + i + name, side, percent, amounts, true, "%", 1, i));
  }

  /** A limit on one share; its unit tells how it was asked for. */
  private Limit single(int i, String name, Side side, double share, String unit) {
    double[] amounts = new double[mix.size()];
    amounts[i] = 1;
    return new Limit(
        words(i, side), "/ingredients/" + i + name, side, share, amounts, false, unit, 0.01, i);
  }

  /** What one of a limit's own numbers is in the unit that a person is told. */
  double shown(Limit limit, double number) {
    if (limit.single() < 0 || limit.relative()) {
      return number;
    }
    return limit.unit().equals("g") ? number * reference : number * 100;
  }

  String told(Limit limit) {
    return limit.words() + " " + Words.amount(shown(limit, limit.limit()), limit.unit());
  }
}
