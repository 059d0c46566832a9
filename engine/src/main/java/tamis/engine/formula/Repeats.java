package tamis.engine.formula;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Units;

/**
 * How often the stages of a part are done: once, or for each of its pieces or loads, always a whole
 * number of times. A load by mass holds what goes into its stage: what is weighed there, and what
 * stays of all that earlier stages hand on. Make-up loss is not taken off, since no stage says that
 * the loss is behind it.
 *
 * @param part whose stages
 * @param times so many times the part is made at once
 * @param pieces that come of all these; null if nothing tells
 */
public record Repeats(Part part, double times, @Nullable Double pieces) {
  /** A count is whole but for rounding if it is no further off. */
  private static final double WHOLE_ENOUGH = 1e-6;

  /**
   * How often one stage is done.
   *
   * @param number at least 1; null if nothing tells
   * @param lacks what to say so that it is known; empty where it is
   */
  public record Count(@Nullable Double number, String lacks) {
    private static Count up(double exact) {
      return new Count(Math.max(1, Math.ceil(exact - WHOLE_ENOUGH)), "");
    }
  }

  /** Of a part that is made once; {@code to} is the size that was asked of it, if any was. */
  public static Repeats of(Part part, @Nullable To to) {
    return new Repeats(part, 1, pieces(part, to));
  }

  /** Pieces of a part, as its size or else its yield counts them; null if neither does. */
  public static @Nullable Double pieces(Part part, @Nullable To to) {
    @Nullable Double asked = to == null ? null : asked(part.formula(), to.pieces(), to.pans());
    if (asked != null) {
      return asked;
    }
    Yield yield = part.formula().yieldOrNothing();
    if (yield.pieces() != null) {
      return yield.pieces() * part.factor();
    }
    if (!yield.pans().isEmpty()) {
      return number(yield.pans()) * part.factor();
    }
    return yield.pieceMass() == null
        ? null
        : (Double) (part.madeUp().typical() / yield.pieceMass().grams());
  }

  /** Pieces that are asked for: as such, or as tins where a piece is a tin. Null if none are. */
  public static @Nullable Double asked(
      Formula formula, @Nullable Double pieces, List<PanCount> pans) {
    if (pieces != null) {
      return pieces;
    }
    Yield yield = formula.yieldOrNothing();
    boolean inTins = yield.pieces() == null || number(yield.pans()) == yield.pieces();
    return !pans.isEmpty() && inTins ? (Double) number(pans) : null;
  }

  private static double number(List<PanCount> pans) {
    return pans.stream().mapToDouble(PanCount::number).sum();
  }

  /** How often this stage of the part is done. */
  public Count of(Stage stage) {
    Per per = stage.per() == null ? Per.BATCH : stage.per();
    if (per == Per.BATCH) {
      return Count.up(1);
    }
    @Nullable Quantity load = stage.load();
    double one = load == null || !load.isMeasured() ? 0 : canonical(load);
    if (per == Per.LOAD && load != null && one > 0 && load.dimension() == Dimension.MASS) {
      return Count.up(gramsInto(stage) / one);
    }
    if (pieces == null) {
      return new Count(
          null,
          "how many pieces there are is not known: give `yield.pieces`, `yield.pieceMass` or"
              + " `yield.pans`");
    }
    if (per == Per.PIECE) {
      return Count.up(pieces);
    }
    return load != null && one > 0 && load.dimension() == Dimension.COUNT
        ? Count.up(pieces / one)
        : new Count(null, "`load` does not say how many pieces or how much mass one load holds");
  }

  private static double canonical(Quantity load) {
    return Units.standard().unit(load.unit(), Measures.METRIC).toCanonical(load.amount());
  }

  /** Grams that go into a stage; all there is where no line says what does. */
  double gramsInto(Stage stage) {
    Set<String> before = new HashSet<>();
    boolean all = gathers(stage, byId(), before);
    before.remove(stage.id());
    double grams = 0;
    for (BatchLine line : part.lines()) {
      grams += into(stage, before, all, line.line(), line.grams().typical());
    }
    for (Part inner : part.parts()) {
      grams += into(stage, before, all, part.lineOf(inner), inner.finished().typical());
    }
    return grams * times;
  }

  private double into(Stage stage, Set<String> before, boolean all, Line line, double grams) {
    @Nullable String at = part.formula().stageOf(line);
    if (stage.id().equals(at)) {
      return grams;
    }
    return all || before.contains(at) ? grams * line.remaining() : 0;
  }

  /** Finds a stage and all before it; true if one of them begins with what no line brings. */
  private boolean gathers(Stage stage, Map<String, Stage> byId, Set<String> found) {
    if (!found.add(stage.id())) {
      return false;
    }
    boolean all = stage.after().isEmpty() && !isFed(stage);
    for (String earlier : stage.after()) {
      @Nullable Stage before = byId.get(earlier);
      all |= before != null && gathers(before, byId, found);
    }
    return all;
  }

  private boolean isFed(Stage stage) {
    return part.formula().lines().stream()
        .anyMatch(line -> stage.id().equals(part.formula().stageOf(line)));
  }

  private Map<String, Stage> byId() {
    Map<String, Stage> byId = new HashMap<>();
    part.formula().stages().forEach(stage -> byId.put(stage.id(), stage));
    return byId;
  }
}
