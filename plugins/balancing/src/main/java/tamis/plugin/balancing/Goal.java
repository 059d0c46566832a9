package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.List;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * What is sought, as the last row of the programme. For targets there are two variables more each,
 * how far below and how far above.
 */
final class Goal {
  private final Balancing.Input input;
  private final Mix mix;
  private final Limits limits;
  private final List<MixBound> targets = new ArrayList<>();

  Goal(Balancing.Input input, Mix mix, Limits limits) {
    this.input = input;
    this.mix = mix;
    this.limits = limits;
    for (int i = 0; i < input.bounds().size(); i++) {
      MixBound bound = input.bounds().get(i);
      if (bound.target() == null) {
        continue;
      }
      targets.add(bound);
      if (!bound.isWhole() && !limits.isFixed()) {
        throw Refusal.of(
            FaultCode.MISSING, "/mass", "a target of 100 g needs the `mass` of the mix");
      }
    }
  }

  boolean isMost() {
    return input.aimed() == Balancing.Aim.MOST;
  }

  /** Variables: the ingredients, then two for each target. */
  double[] factors() {
    int size = mix.size();
    double[] factors = new double[size + 2 * targets.size()];
    double[] ofItems =
        switch (input.aimed()) {
          case NEAREST -> new double[size];
          case LEAST_COST ->
              Limits.times(mix.costs(), limits.isFixed() ? 1 : limits.reference() / 1000);
          case LEAST, MOST ->
              Limits.times(
                  mix.amounts(String.valueOf(input.of())),
                  limits.isFixed() ? 1 : limits.reference() / 100);
        };
    System.arraycopy(ofItems, 0, factors, 0, size);
    for (int i = 0; i < targets.size(); i++) {
      Double weight = targets.get(i).weight();
      factors[size + 2 * i] = weight == null ? 1 : weight;
      factors[size + 2 * i + 1] = weight == null ? 1 : weight;
    }
    return factors;
  }

  /** Ties the variables of targets to the mix. */
  void addTargets(Programme programme) {
    int size = mix.size();
    for (int t = 0; t < targets.size(); t++) {
      MixBound bound = targets.get(t);
      double target = bound.target() == null ? 0 : bound.target();
      double scale = bound.isWhole() ? limits.reference() / 100 : 1;
      double[] amounts = mix.amounts(bound.property());
      double[] row = new double[size + 2 * targets.size()];
      for (int i = 0; i < size; i++) {
        row[i] = amounts[i] * scale - (bound.isWhole() ? 0 : target);
      }
      row[size + 2 * t] = 1;
      row[size + 2 * t + 1] = -1;
      programme.add(row, Relation.EQUAL, bound.isWhole() ? target : 0);
    }
  }

  String unit() {
    boolean fixed = limits.isFixed();
    return switch (input.aimed()) {
      case LEAST_COST -> mix.currency() + (fixed ? "/kg" : "");
      case NEAREST -> "weighted units";
      case LEAST, MOST -> {
        Property property = Property.of(String.valueOf(input.of()));
        yield fixed ? property.per100() : property.unit();
      }
    };
  }

  String words() {
    return switch (input.aimed()) {
      case LEAST_COST -> "least cost";
      case NEAREST -> "least sum of weighted distances from the targets";
      case LEAST -> "least " + input.of();
      case MOST -> "most " + input.of();
    };
  }
}
