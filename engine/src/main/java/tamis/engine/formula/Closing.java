package tamis.engine.formula;

import java.util.ArrayList;
import java.util.List;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Spread;

/**
 * Closes the lines of one formula: solves flour = fixed flour + flour in percent lines, which
 * itself depends on the flour, and puts every percentage into grams.
 */
final class Closing {
  private static final double ALL_FLOUR_TOLERANCE = 1e-6;
  private static final double FREE_FLOUR_GRAMS = 100;

  /** A formula of less cannot be divided by. */
  private static final double NOTHING_GRAMS = 1e-9;

  private final Formula formula;
  private final List<OpenLine> open;
  private final String at;
  private final boolean free;

  private Closing(Formula formula, List<OpenLine> open, String at) {
    this.formula = formula;
    this.open = open;
    this.at = at;
    boolean percent = open.stream().anyMatch(OpenLine::isPercent);
    boolean measured = open.stream().anyMatch(line -> line.fixed().typical() > 0);
    this.free = percent && !measured;
  }

  /**
   * @param at where the document stands in the input
   * @param mostLines how many ingredient lines it may have over all its parts
   * @throws Refusal with pointers into the document
   */
  static Draft close(Formula formula, List<OpenLine> open, String at, int mostLines) {
    Closing closing = new Closing(formula, open, at);
    long expanded = open.stream().mapToLong(OpenLine::expanded).sum();
    if (expanded > mostLines) {
      throw Refusal.of(
          FaultCode.TOO_MANY,
          at + "/lines",
          "over all its parts `"
              + formula.name()
              + "` has "
              + expanded
              + " lines, at most "
              + mostLines
              + " are worked out");
    }
    return closing.sized(closing.draft(closing.flour(), expanded));
  }

  private Draft draft(double flour, long expanded) {
    List<Draft.DraftLine> lines = new ArrayList<>();
    Spread weighed = Spread.zero();
    Spread mass = Spread.zero();
    for (OpenLine line : open) {
      Draft.DraftLine closed = line.weighed(flour);
      lines.add(closed);
      weighed = weighed.plus(closed.grams());
      mass = mass.plus(closed.grams().times(line.line().remaining()));
    }
    Draft draft = new Draft(formula, List.copyOf(lines), free, flour, weighed, mass, expanded);
    if (draft.finished().typical() < NOTHING_GRAMS) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          at + "/lines",
          "`" + formula.name() + "` weighs nothing: no line has a mass that stays in it");
    }
    return draft;
  }

  private double flour() {
    double fixed = 0;
    double perFlour = 0;
    for (OpenLine line : open) {
      fixed += line.fixed().typical() * line.flourShare();
      perFlour += line.perFlour() * line.flourShare();
    }
    if (open.stream().noneMatch(OpenLine::isPercent)) {
      return fixed;
    }
    if (free) {
      if (Math.abs(perFlour - 1) > ALL_FLOUR_TOLERANCE) {
        throw noFlour(
            "in a formula wholly in percent all flours together are 100 %, here they are "
                + percent(perFlour));
      }
      return FREE_FLOUR_GRAMS;
    }
    if (fixed <= 0) {
      throw noFlour("percent is of the total flour, and no flour line has a weight that fixes it");
    }
    if (perFlour >= 1) {
      throw noFlour(
          "flour with a weight stands beside flours that are "
              + percent(perFlour)
              + " of all flour; in percent they must be less than 100 %");
    }
    return fixed / (1 - perFlour);
  }

  private Refusal noFlour(String why) {
    return Refusal.of(FaultCode.NO_FLOUR, at + "/lines", why);
  }

  private static String percent(double part) {
    return Bounds.plain(Math.rint(part * 1e8) / 1e6) + " %";
  }

  /** A formula wholly in percent may say its size by pieces and their mass. */
  private Draft sized(Draft draft) {
    Yield yield = formula.yieldOrNothing();
    if (!free) {
      return draft;
    }
    if (yield.mass() != null) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          at + "/yield/mass",
          "a formula wholly in percent has no measured mass");
    }
    if (yield.pieces() == null || yield.pieceMass() == null) {
      return draft;
    }
    double factor = yield.pieces() * yield.pieceMass().grams() / draft.madeUp().typical();
    List<Draft.DraftLine> lines = draft.lines().stream().map(line -> line.times(factor)).toList();
    return new Draft(
        formula,
        lines,
        false,
        draft.flour() * factor,
        draft.weighed().times(factor),
        draft.mass().times(factor),
        draft.expanded());
  }
}
