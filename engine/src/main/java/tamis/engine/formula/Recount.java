package tamis.engine.formula;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.BillRow;
import tamis.engine.formula.Batch.Part;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;

/** Works a batch out again after its lines were changed. */
final class Recount {
  private final Map<String, BatchLine> changed = new HashMap<>();
  private final double times;

  private Recount(double times) {
    this.times = times;
  }

  /**
   * @param times what the factors, and masses that were measured, are multiplied by
   */
  static Batch of(Batch batch, double times, Function<BatchLine, Spread> grams) {
    Recount recount = new Recount(times);
    List<BatchLine> lines = new ArrayList<>();
    for (BatchLine line : batch.lines()) {
      BatchLine changed = with(line, grams.apply(line));
      lines.add(changed);
      recount.changed.put(line.path(), changed);
    }
    List<BillRow> bill = Expansion.bill(lines);
    return new Batch(
        batch.factor() * times,
        recount.part(batch.root()),
        lines,
        bill,
        ByProducts.of(bill),
        batch.limitedBy(),
        batch.remarks(),
        batch.sources());
  }

  private static BatchLine with(BatchLine line, Spread grams) {
    double before = line.grams().typical();
    Quantity quantity = line.quantity();
    return new BatchLine(
        line.path(),
        line.ingredient(),
        line.line(),
        grams,
        quantity == null || before == 0 ? quantity : quantity.times(grams.typical() / before),
        line.remains(),
        line.flour());
  }

  private Part part(Part part) {
    List<BatchLine> lines = part.lines().stream().map(l -> changed.get(l.path())).toList();
    List<Part> parts = part.parts().stream().map(this::part).toList();
    Spread weighed = Spread.zero();
    Spread mass = Spread.zero();
    double flour = 0;
    for (BatchLine line : lines) {
      weighed = weighed.plus(line.grams());
      mass = mass.plus(line.grams().times(line.line().remaining()));
      flour += line.flour() ? line.grams().typical() : 0;
    }
    for (Part inner : parts) {
      weighed = weighed.plus(inner.finished());
      mass = mass.plus(inner.finished().times(part.lineOf(inner).remaining()));
      flour += inner.role().joins() ? inner.flour() : 0;
    }
    Yield yield = part.formula().yieldOrNothing();
    Spread madeUp = mass.times(yield.afterMakeUp());
    return new Part(
        part.path(),
        part.formula(),
        part.role(),
        part.factor() * times,
        lines,
        parts,
        weighed,
        mass,
        madeUp,
        yield.mass() == null ? madeUp.times(yield.afterBake()) : part.finished().times(times),
        flour);
  }
}
