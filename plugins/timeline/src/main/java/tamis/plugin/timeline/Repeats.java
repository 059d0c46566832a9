package tamis.plugin.timeline;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.Batch;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.Per;
import tamis.engine.formula.Stage;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Quantity;

/** How often the stages of a part are repeated for its pieces and loads. */
final class Repeats {
  /** Below this a count is whole but for rounding. */
  private static final double WHOLE_ENOUGH = 1e-6;

  private final Batch.Part part;
  private final @Nullable To to;

  Repeats(Batch.Part part, @Nullable To to) {
    this.part = part;
    this.to = to;
  }

  /** How many loads follow one another, and how many times as long each takes as one. */
  record Times(int loads, double longer) {
    static final Times ONCE = new Times(1, 1);
  }

  /** Null if a count is needed and not known; the fault is then gathered. */
  @Nullable Times of(Stage stage, String name, String at, Faults faults) {
    @Nullable Per per = stage.per();
    if (per == null || per == Per.BATCH) {
      return Times.ONCE;
    }
    @Nullable Quantity load = stage.load();
    if (per == Per.LOAD
        && load != null
        && load.isMeasured()
        && load.dimension() == Dimension.MASS) {
      return loads(part.weighed().typical() / grams(load), name, at, faults);
    }
    @Nullable Double pieces = pieces();
    if (pieces == null) {
      faults.add(
          FaultCode.INCOMPLETE,
          at,
          name
              + " is repeated per "
              + word(per)
              + ", but how many pieces there are is not known:"
              + " give `yield.pieces`, `yield.pieceMass` or `yield.pans`");
      return null;
    }
    if (per == Per.PIECE) {
      return new Times(1, up(pieces));
    }
    if (load == null
        || !load.isMeasured()
        || load.dimension() != Dimension.COUNT
        || load.amount() <= 0) {
      faults.add(
          FaultCode.INCOMPLETE,
          at,
          name
              + " is repeated per load, but `load` does not say how many pieces or how much mass"
              + " one load holds");
      return null;
    }
    return loads(pieces / load.amount(), name, at, faults);
  }

  private static double grams(Quantity load) {
    return Mass.parse(Bounds.plain(load.amount()) + " " + load.unit()).grams();
  }

  private static String word(Per per) {
    return per == Per.PIECE ? "piece" : "load";
  }

  private static @Nullable Times loads(double exact, String name, String at, Faults faults) {
    double loads = up(exact);
    if (!(loads <= Work.MOST_TASKS)) {
      faults.add(
          FaultCode.TOO_MANY, at, name + " comes to more than " + Work.MOST_TASKS + " loads");
      return null;
    }
    return new Times((int) loads, 1);
  }

  private static double up(double count) {
    return Math.max(1, Math.ceil(count - WHOLE_ENOUGH));
  }

  private @Nullable Double pieces() {
    Yield yield = part.formula().yieldOrNothing();
    if (to != null && to.pieces() != null) {
      return to.pieces();
    }
    // Pieces that are tins: other tins are asked for, so many pieces come out.
    boolean inTins = yield.pieces() == null || pans(yield.pans()) == yield.pieces();
    if (to != null && !to.pans().isEmpty() && inTins) {
      return pans(to.pans());
    }
    if (yield.pieces() != null) {
      return yield.pieces() * part.factor();
    }
    if (!yield.pans().isEmpty()) {
      return pans(yield.pans()) * part.factor();
    }
    @Nullable Mass piece = yield.pieceMass();
    return piece == null ? null : part.madeUp().typical() / piece.grams();
  }

  private static double pans(List<PanCount> pans) {
    return pans.stream().mapToDouble(PanCount::number).sum();
  }
}
