package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** A linear programme over shares that are not negative, scaled before it is solved. */
final class Programme {
  private static final double CROSSED = 1e-12;

  private final int size;
  private final double[] goal;
  private final boolean most;
  private final List<Row> rows = new ArrayList<>();
  private final double[] lows;
  private final double[] highs;

  /** A row over all variables. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Row(double[] factors, Relation relation, double right) {}

  /**
   * How it ended.
   *
   * @param values of all variables, or null if there is no solution
   * @param unbounded whether there is no end to how good it gets
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Ending(double @Nullable [] values, double value, boolean unbounded) {
    boolean isSolved() {
      return values != null;
    }
  }

  /**
   * @param goal what is least or most, a factor a variable
   */
  Programme(double[] goal, boolean most) {
    this.size = goal.length;
    this.goal = goal.clone();
    this.most = most;
    this.lows = new double[size];
    this.highs = new double[size];
    Arrays.fill(highs, Double.POSITIVE_INFINITY);
  }

  int size() {
    return size;
  }

  void add(double[] factors, Relation relation, double right) {
    rows.add(new Row(factors, relation, right));
  }

  void add(Limit limit) {
    int one = limit.single();
    if (one < 0 || limit.relative()) {
      rows.add(new Row(factors(limit), relation(limit), limit.right()));
    } else if (limit.side() == Side.LOW) {
      lows[one] = Math.max(lows[one], limit.limit());
    } else {
      highs[one] = Math.min(highs[one], limit.limit());
    }
  }

  static Relation relation(Limit limit) {
    return limit.side() == Side.LOW ? Relation.AT_LEAST : Relation.AT_MOST;
  }

  /** The factors of the row that keeps this limit. */
  double[] factors(Limit limit) {
    double[] factors = new double[size];
    for (int i = 0; i < limit.amounts().length; i++) {
      factors[i] = limit.factor(i);
    }
    return factors;
  }

  Ending solve() {
    for (int i = 0; i < size; i++) {
      if (lows[i] > highs[i] + CROSSED) {
        return new Ending(null, 0, false);
      }
    }
    ExpressionsBasedModel model = model();
    Optimisation.Result result = most ? model.maximise() : model.minimise();
    return switch (result.getState()) {
      case OPTIMAL, DISTINCT -> found(result);
      case UNBOUNDED -> new Ending(null, 0, true);
      case INFEASIBLE, INVALID -> new Ending(null, 0, false);
      default ->
          throw Refusal.of(
              FaultCode.IMPOSSIBLE,
              "no mix was found, and none was ruled out; ask for less at once");
    };
  }

  private ExpressionsBasedModel model() {
    ExpressionsBasedModel model = new ExpressionsBasedModel();
    double largest = largest(goal);
    List<Variable> variables = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      Variable variable = model.newVariable("v" + i).lower(lows[i]).weight(goal[i] / largest);
      if (highs[i] < Double.POSITIVE_INFINITY) {
        variable.upper(Math.max(lows[i], highs[i]));
      }
      variables.add(variable);
    }
    for (int r = 0; r < rows.size(); r++) {
      add(model.newExpression("r" + r), rows.get(r), variables);
    }
    return model;
  }

  private void add(Expression expression, Row row, List<Variable> variables) {
    double largest = largest(row.factors());
    for (int i = 0; i < size; i++) {
      if (row.factors()[i] != 0) {
        expression.set(variables.get(i), row.factors()[i] / largest);
      }
    }
    double right = row.right() / largest;
    switch (row.relation()) {
      case AT_LEAST -> expression.lower(right);
      case AT_MOST -> expression.upper(right);
      case EQUAL -> expression.level(right);
    }
  }

  private Ending found(Optimisation.Result result) {
    double value = 0;
    double[] values = new double[size];
    for (int i = 0; i < size; i++) {
      values[i] = Math.max(0, result.doubleValue(i));
      value += values[i] * goal[i];
    }
    return new Ending(values, value, false);
  }

  private static double largest(double[] factors) {
    double largest = 0;
    for (double factor : factors) {
      largest = Math.max(largest, Math.abs(factor));
    }
    return largest == 0 ? 1 : largest;
  }
}
