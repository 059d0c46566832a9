package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Repeats;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.quantity.Dimension;

/** One formula of the day, ordered or a part of others, made once for all of them. */
final class Making {
  private final FormulaRef reference;
  private final Batch one;
  private final Map<Making, Double> parts = new LinkedHashMap<>();
  private double ordered;
  private double needed;
  private double onHand;
  private double fromStock;
  private @Nullable Size size;
  private double timesOfSize;
  private boolean severalSizes;
  private @Nullable BatchPlan plan;

  /**
   * @param one the formula made once
   */
  Making(FormulaRef reference, Batch one) {
    this.reference = reference;
    this.one = one;
  }

  void uses(Making part, double times) {
    parts.merge(part, times, Double::sum);
  }

  void order(double times) {
    ordered += times;
    needed += times;
  }

  /** So many times is one of this size. */
  void inSize(Size ordered, double times) {
    severalSizes |= size != null && !size.equals(ordered);
    size = ordered;
    timesOfSize = times;
  }

  /** How often its stages are done for so many times, with the pieces that its orders count. */
  Repeats repeats(double times) {
    @Nullable Double counted =
        size == null || severalSizes || timesOfSize <= 0
            ? null
            : Repeats.asked(formula(), size.pieces(), size.pans());
    @Nullable Double written = Repeats.pieces(one.root(), null);
    @Nullable Double pieces =
        counted != null
            ? (Double) (counted * times / timesOfSize)
            : written == null ? null : (Double) (written * times);
    return new Repeats(one.root(), times, pieces);
  }

  void store(double times) {
    onHand += times;
  }

  /** Settles what is taken from stock; the rest is to be made. */
  double toMake() {
    fromStock = Math.min(onHand, needed);
    double rest = needed - fromStock;
    return rest > needed * 1e-12 ? rest : 0;
  }

  /** Settles the batches and asks for the parts. */
  void make(@Nullable BatchPlan batches) {
    plan = batches;
    parts.forEach((part, times) -> part.needed += times * made());
  }

  FormulaRef reference() {
    return reference;
  }

  Formula formula() {
    return one.root().formula();
  }

  /** Id, else title. */
  String name() {
    return formula().id() == null ? formula().name() : formula().id();
  }

  Batch one() {
    return one;
  }

  Map<Making, Double> parts() {
    return parts;
  }

  boolean isOrdered() {
    return ordered > 0;
  }

  double needed() {
    return needed;
  }

  double fromStock() {
    return fromStock;
  }

  double leftInStock() {
    return onHand - fromStock;
  }

  double made() {
    return plan == null ? 0 : plan.made();
  }

  /** Made over what is needed. */
  double spare() {
    double over = made() + fromStock - needed;
    return over > needed * 1e-9 ? over : 0;
  }

  @Nullable BatchPlan plan() {
    return plan;
  }

  double finishedGrams() {
    return one.root().finished().typical();
  }

  /** Its own ingredients for one time, without those of its parts. */
  Map<Ingredient, Double> ownGrams() {
    Map<Ingredient, Double> own = new LinkedHashMap<>();
    for (BatchLine line : one.root().lines()) {
      own.merge(line.ingredient(), line.grams().typical(), Double::sum);
    }
    return own;
  }

  /** Eggs that are broken for one time, by the first line that counts them; 0 if none does. */
  double eggs() {
    for (BatchLine line : one.root().lines()) {
      boolean counted = line.quantity() != null && line.quantity().dimension() == Dimension.COUNT;
      if (counted && "egg".equals(line.ingredient().kind()) && line.quantity() != null) {
        return line.quantity().amount();
      }
    }
    return 0;
  }

  /** All formulas that these use, parts before what they are a part of. */
  static List<Making> inOrder(Iterable<Making> wanted) {
    List<Making> order = new ArrayList<>();
    wanted.forEach(one -> one.addTo(order));
    return order;
  }

  private void addTo(List<Making> order) {
    if (!order.contains(this)) {
      parts.keySet().forEach(part -> part.addTo(order));
      order.add(this);
    }
  }
}
