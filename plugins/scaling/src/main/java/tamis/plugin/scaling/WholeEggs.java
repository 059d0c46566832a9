package tamis.plugin.scaling;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** How many eggs the batch takes, and the factors that would take whole ones. */
public record WholeEggs(
    @Described("Id of the ingredient") String ingredient,
    @Described("How many the batch takes") double count,
    @Described("Whole number below") double down,
    @Described("Factor for the whole number below; left out if that would be none")
        @Nullable Double downFactor,
    @Described("Whole number above") double up,
    @Described("Factor for the whole number above") double upFactor) {
  private static final double WHOLE_ENOUGH = 1e-9;

  /** Of every ingredient of kind egg that is counted in pieces. */
  static List<WholeEggs> of(Batch batch) {
    List<WholeEggs> eggs = new ArrayList<>();
    for (Batch.BillRow row : batch.bill()) {
      @Nullable Mass each = row.ingredient().pieceMass();
      if ("egg".equals(row.ingredient().kind()) && each != null && row.grams().typical() > 0) {
        eggs.add(of(row.ingredient().id(), row.grams().typical() / each.grams(), batch.factor()));
      }
    }
    return eggs;
  }

  private static WholeEggs of(String ingredient, double count, double factor) {
    double near = Math.rint(count);
    boolean whole = Math.abs(count - near) < WHOLE_ENOUGH * Math.max(1, count);
    double down = whole ? near : Math.floor(count);
    double up = whole ? near : Math.ceil(count);
    @Nullable Double downFactor = down > 0 ? factor * down / count : null;
    return new WholeEggs(ingredient, count, down, downFactor, up, factor * up / count);
  }

  /** The factor for the nearest whole number that is not none. */
  double nearestFactor() {
    return downFactor != null && count - down < up - count ? downFactor : upFactor;
  }
}
