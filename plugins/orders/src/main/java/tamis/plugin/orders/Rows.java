package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Yield;

/** Writes what is made. */
final class Rows {
  private Rows() {}

  static List<Sheet.BatchRow> batches(List<Making> order) {
    List<Sheet.BatchRow> rows = new ArrayList<>();
    for (Making making : order) {
      @Nullable BatchPlan plan = making.plan();
      for (BatchPlan.Load load : plan == null ? List.<BatchPlan.Load>of() : plan.loads()) {
        Yield yield = making.formula().yieldOrNothing();
        rows.add(
            new Sheet.BatchRow(
                making.name(),
                making.formula().name(),
                load.number(),
                load.size(),
                making.one().root().weighed().typical() * load.size(),
                times(yield.pieces(), load.size()),
                times(yield.portions(), load.size()),
                load.machine(),
                making.eggs() == 0 ? null : (Double) (making.eggs() * load.size())));
      }
    }
    return rows;
  }

  static List<Sheet.Made> made(List<Making> order) {
    List<Sheet.Made> rows = new ArrayList<>();
    for (Making making : order) {
      double one = making.finishedGrams();
      @Nullable BatchPlan plan = making.plan();
      rows.add(
          new Sheet.Made(
              making.name(),
              making.formula().name(),
              making.needed() * one,
              making.fromStock() * one,
              making.made() * one,
              making.spare() * one,
              times(making.formula().yieldOrNothing().portions(), making.spare()),
              plan == null || plan.best(),
              plan == null ? 0 : plan.gap() * one));
    }
    return rows;
  }

  private static @Nullable Double times(@Nullable Double one, double times) {
    return one == null ? null : (Double) (one * times);
  }
}
