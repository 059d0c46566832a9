package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.List;
import tamis.engine.formula.FormulaRef;

/** Equal order lines. */
final class OrderGroup {
  /** What makes two order lines equal. */
  record Order(FormulaRef formula, Size size) {}

  private final Order order;
  private final Making making;
  private final double times;
  private final List<Integer> entries = new ArrayList<>();
  private long count;

  OrderGroup(Order order, Making making, double times) {
    this.order = order;
    this.making = making;
    this.times = times;
  }

  Order order() {
    return order;
  }

  Making making() {
    return making;
  }

  /** How many times the formula one of them is. */
  double times() {
    return times;
  }

  List<Integer> entries() {
    return entries;
  }

  long count() {
    return count;
  }

  /** One more line of the orders is like the others. */
  void add(OrderLine line, int place) {
    entries.add(place);
    count += line.number();
    making.order(times * line.number());
    making.inSize(order.size(), times);
  }
}
