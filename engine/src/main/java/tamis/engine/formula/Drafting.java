package tamis.engine.formula;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;
import tamis.engine.record.Limits;

/**
 * Works out formulas as written: every line in grams, percent lines by the flour, sub-formulas
 * first. Each stored formula is worked out once.
 */
final class Drafting {
  private static final double ALL_FLOUR_TOLERANCE = 1e-6;
  private static final double FREE_FLOUR_GRAMS = 100;

  private final Larder larder;
  private final Limits limits;
  private final List<Remark> remarks = new ArrayList<>();
  private final Map<String, Draft> done = new HashMap<>();
  private final Map<String, String> path = new LinkedHashMap<>();

  Drafting(Larder larder, Limits limits) {
    this.larder = larder;
    this.limits = limits;
  }

  /** What the baker should know about the quantities read so far. */
  List<Remark> remarks() {
    return List.copyOf(remarks);
  }

  /**
   * @param at pointer of the reference in the input
   * @throws Refusal with all faults of all parts
   */
  Draft draft(FormulaRef reference, String at) {
    String name = reference.toString();
    if (reference.object() == null) {
      @Nullable Draft known = done.get(name);
      if (known != null) {
        return known;
      }
    }
    Formula formula = larder.formula(reference);
    String id = formula.id() == null ? name + "#" + path.size() : formula.id();
    refuseCycle(id, at);
    path.put(id, at);
    int earlier = remarks.size();
    try {
      if (reference.object() != null) {
        return draft(formula, at);
      }
      Draft draft = draft(formula, "");
      remarks.subList(earlier, remarks.size()).replaceAll(remark -> within(remark, name, at));
      done.put(name, draft);
      return draft;
    } catch (Refusal refusal) {
      throw reference.object() != null ? refusal : within(refusal, name, at);
    } finally {
      path.remove(id);
    }
  }

  private static Remark within(Remark remark, String name, String at) {
    String message = remark.message() + " (in formula `" + name + "` at " + remark.pointer() + ")";
    return new Remark(remark.kind(), remark.code(), message, at);
  }

  private void refuseCycle(String id, String at) {
    if (path.containsKey(id)) {
      List<String> circle = new ArrayList<>(path.keySet());
      circle = circle.subList(circle.indexOf(id), circle.size());
      String way = String.join(" → ", circle) + " → " + id;
      throw new Refusal(
          new Fault(
              FaultCode.CYCLE, at, id, null, "formulas contain each other in a circle: " + way));
    }
    if (path.size() > limits.depth()) {
      throw Refusal.of(
          FaultCode.TOO_DEEP, at, "formulas nest deeper than " + limits.depth() + " levels");
    }
  }

  /** Faults inside a stored formula: the caller's text has no such place, so the words name it. */
  private static Refusal within(Refusal refusal, String name, String at) {
    return new Refusal(
        refusal.faults().stream()
            .map(
                f -> {
                  String place =
                      f.pointer().startsWith("/") && f.code() != FaultCode.CYCLE
                          ? " at " + f.pointer()
                          : "";
                  boolean told = f.code() == FaultCode.CYCLE || f.code() == FaultCode.TOO_DEEP;
                  String message =
                      told
                          ? f.message()
                          : f.message() + " (in formula `" + name + "`" + place + ")";
                  return new Fault(f.code(), at, f.given(), f.allowed(), message);
                })
            .toList());
  }

  private Draft draft(Formula formula, String at) {
    Faults faults = new Faults();
    Set<String> flours = extraFlours(formula, at, faults);
    List<Open> open = new ArrayList<>();
    for (int i = 0; i < formula.lines().size(); i++) {
      int index = i;
      String place = at + Formula.linePointer(i);
      Line line = formula.lines().get(i);
      @Nullable Open read = faults.gather("", () -> open(formula, line, index, flours, place));
      if (read != null) {
        open.add(read);
      }
    }
    faults.refuseIfAny();
    return close(formula, open, at);
  }

  private Set<String> extraFlours(Formula formula, String at, Faults faults) {
    Set<String> flours = new HashSet<>();
    for (int i = 0; i < formula.flour().size(); i++) {
      IngredientRef flour = formula.flour().get(i);
      @Nullable Ingredient found =
          faults.gather(at + "/flour/" + i, () -> larder.ingredient(flour));
      if (found != null) {
        flours.add(found.id());
      }
    }
    return flours;
  }

  /** A line before the flour is known: grams, and grams for each gram of flour. */
  private record Open(
      int index,
      Line line,
      @Nullable Ingredient ingredient,
      @Nullable Draft part,
      Spread fixed,
      double perFlour,
      double flourShare,
      List<Cited> sources) {}

  private Open open(Formula formula, Line line, int index, Set<String> flours, String at) {
    Notes notes = new Notes();
    Weighing weighing = new Weighing(formula.measures(), at + "/quantity", "", notes);
    double perFlour = line.quantity().isPercent() ? line.quantity().amount() / 100 : 0;
    if (line.formula() != null) {
      Draft part = draft(line.formula(), at + "/formula");
      boolean percent = line.quantity().isPercent();
      Spread fixed = percent ? Spread.zero() : finishedMass(line, part, weighing, at + "/quantity");
      remarks.addAll(notes.remarks());
      double share = line.joins() ? part.flourShare() : 0;
      return new Open(index, line, null, part, fixed, perFlour, share, List.of());
    }
    IngredientRef reference = Objects.requireNonNull(line.ingredient());
    Ingredient ingredient = under(at + "/ingredient", () -> larder.ingredient(reference));
    Spread fixed =
        line.quantity().isMeasured()
            ? under(
                at + "/quantity", () -> weighing.grams(line.quantity(), ingredient, line.state()))
            : Spread.zero();
    remarks.addAll(notes.remarks());
    double share = ingredient.isFlour() || flours.contains(ingredient.id()) ? 1 : 0;
    return new Open(index, line, ingredient, null, fixed, perFlour, share, notes.sources());
  }

  /** What a formula line asks for, in grams of the finished part. */
  private static Spread finishedMass(Line line, Draft part, Weighing weighing, String place) {
    Unit unit = under(place, () -> weighing.unit(line.quantity().unit()));
    double amount = line.quantity().amount();
    if (unit.dimension() == Dimension.MASS) {
      return Spread.exactly(amount * unit.factor());
    }
    Yield yield = part.formula().yieldOrNothing();
    if (unit.dimension() == Dimension.VOLUME) {
      if (yield.density() == null) {
        throw Refusal.of(
            FaultCode.NO_DENSITY,
            place,
            "`"
                + line.name()
                + "` says no density of its yield, so a volume of it cannot be weighed; give a mass");
      }
      return Spread.exactly(amount * unit.factor() * yield.density().gramsPerMillilitre());
    }
    if (unit.symbol().equals("batch") && !part.free()) {
      return part.finished().times(amount);
    }
    throw Refusal.of(
        FaultCode.NO_PIECE_MASS,
        place,
        "a "
            + unit.symbol()
            + " of `"
            + line.name()
            + "` has no mass; give a mass, a volume or a percentage");
  }

  /** Solves flour = fixed flour + flour in percent lines, which itself depends on the flour. */
  private Draft close(Formula formula, List<Open> open, String at) {
    double fixedFlour = 0;
    double flourPerFlour = 0;
    boolean percent = false;
    boolean measured = false;
    for (Open line : open) {
      fixedFlour += line.fixed().typical() * line.flourShare();
      flourPerFlour += line.perFlour() * line.flourShare();
      percent |= line.line().quantity().isPercent();
      measured |= line.line().quantity().isMeasured() && line.fixed().typical() > 0;
    }
    double flour = fixedFlour;
    boolean free = percent && !measured;
    if (percent) {
      flour = flour(fixedFlour, flourPerFlour, free, at);
    }
    List<Draft.DraftLine> lines = new ArrayList<>();
    Spread weighed = Spread.zero();
    Spread mass = Spread.zero();
    for (Open line : open) {
      Spread grams =
          line.line().quantity().isPercent()
              ? Spread.exactly(line.perFlour() * flour)
              : line.fixed();
      lines.add(
          new Draft.DraftLine(
              line.index(),
              line.line(),
              line.ingredient(),
              line.part(),
              grams,
              line.ingredient() != null && line.flourShare() == 1,
              line.sources()));
      weighed = weighed.plus(grams);
      mass = mass.plus(grams.times(line.line().remaining()));
    }
    if (mass.typical() <= 0) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          at + "/lines",
          "`" + formula.name() + "` weighs nothing: no line has a mass that stays in it");
    }
    return sized(new Draft(formula, List.copyOf(lines), free, flour, weighed, mass), at);
  }

  private static double flour(double fixed, double perFlour, boolean free, String at) {
    if (free) {
      if (Math.abs(perFlour - 1) > ALL_FLOUR_TOLERANCE) {
        throw Refusal.of(
            FaultCode.NO_FLOUR,
            at + "/lines",
            "in a formula wholly in percent all flours together are 100 %, here they are "
                + Bounds.plain(Math.rint(perFlour * 1e8) / 1e6)
                + " %");
      }
      return FREE_FLOUR_GRAMS;
    }
    if (fixed <= 0 || perFlour >= 1) {
      throw Refusal.of(
          FaultCode.NO_FLOUR,
          at + "/lines",
          "percent is of the total flour, and no flour line has a weight that fixes it");
    }
    return fixed / (1 - perFlour);
  }

  /** A formula wholly in percent may say its size by pieces and their mass. */
  private static Draft sized(Draft draft, String at) {
    Yield yield = draft.formula().yieldOrNothing();
    if (!draft.free() || yield.pieces() == null || yield.pieceMass() == null) {
      if (draft.free() && yield.mass() != null) {
        throw Refusal.of(
            FaultCode.INCONSISTENT,
            at + "/yield/mass",
            "a formula wholly in percent has no measured mass");
      }
      return draft;
    }
    double factor = yield.pieces() * yield.pieceMass().grams() / draft.madeUp().typical();
    List<Draft.DraftLine> lines =
        draft.lines().stream()
            .map(
                l ->
                    new Draft.DraftLine(
                        l.index(),
                        l.line(),
                        l.ingredient(),
                        l.part(),
                        l.grams().times(factor),
                        l.flour(),
                        l.sources()))
            .toList();
    return new Draft(
        draft.formula(),
        lines,
        false,
        draft.flour() * factor,
        draft.weighed().times(factor),
        draft.mass().times(factor));
  }

  private static <T> T under(String at, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      throw refusal.under(at);
    }
  }
}
