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
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Limits;

/**
 * Works out formulas as written: every line in grams, percent lines by the flour, sub-formulas
 * first. Each stored formula is worked out once.
 */
final class Drafting {
  /** Faults of one stored formula that are told; a caller cannot mend more at once. */
  private static final int MOST_FAULTS_INSIDE = 100;

  private final Larder larder;
  private final Limits limits;
  private final List<Remark> remarks = new ArrayList<>();
  private final Map<String, Draft> done = new HashMap<>();
  private final Map<String, FaultCode> failed = new HashMap<>();
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
    return reference.object() == null
        ? stored(reference.toString(), reference, at)
        : entered(nameOf(reference.object()), reference, at, at);
  }

  private Draft stored(String name, FormulaRef reference, String at) {
    @Nullable Draft known = done.get(name);
    if (known != null) {
      return known;
    }
    @Nullable FaultCode why = failed.get(name);
    if (why != null) {
      throw Refusal.of(
          why, at, "formula `" + name + "` cannot be made, as is told where it is named first");
    }
    int earlier = remarks.size();
    try {
      Draft draft = entered(name, reference, at, "");
      remarks.subList(earlier, remarks.size()).replaceAll(remark -> within(remark, name, at));
      done.put(name, draft);
      return draft;
    } catch (Refusal refusal) {
      if (!path.containsKey(name)) {
        failed.put(name, refusal.faults().get(0).code());
      }
      throw refusal;
    }
  }

  /** A document without an id can be no part of a circle. */
  private String nameOf(Formula document) {
    return document.id() == null ? "formula " + (path.size() + 1) : document.id();
  }

  /**
   * @param inside where the document itself stands in the input; empty if it is a stored one
   */
  private Draft entered(String name, FormulaRef reference, String at, String inside) {
    boolean stored = reference.object() == null;
    Formula formula = under(at, () -> larder.formula(reference));
    refuseCycle(name, at);
    path.put(name, at);
    try {
      return draft(formula, inside);
    } catch (Refusal refusal) {
      throw stored ? within(refusal, name, at) : refusal;
    } finally {
      path.remove(name);
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
            .limit(MOST_FAULTS_INSIDE)
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
    List<OpenLine> open = new ArrayList<>();
    for (int i = 0; i < formula.lines().size(); i++) {
      int index = i;
      String place = at + Formula.linePointer(i);
      Line line = formula.lines().get(i);
      @Nullable OpenLine read = faults.gather("", () -> open(formula, line, index, flours, place));
      if (read != null) {
        open.add(read);
      }
    }
    faults.refuseIfAny();
    return Closing.close(formula, open, at, limits.expandedLines());
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

  private OpenLine open(Formula formula, Line line, int index, Set<String> flours, String at) {
    Notes notes = new Notes();
    Weighing weighing = new Weighing(formula.measures(), at + "/quantity", "", notes);
    try {
      return line.formula() == null
          ? ingredient(line, index, flours, weighing, at)
          : part(line, index, weighing, at);
    } finally {
      remarks.addAll(notes.remarks());
    }
  }

  private OpenLine part(Line line, int index, Weighing weighing, String at) {
    Draft part = draft(Objects.requireNonNull(line.formula()), at + "/formula");
    Spread fixed =
        line.quantity().isPercent()
            ? Spread.zero()
            : under(
                at + "/quantity",
                () -> FinishedMass.of(line.quantity(), part, line.name(), weighing));
    double share = line.joins() ? part.flourShare() : 0;
    return new OpenLine(index, line, null, part, fixed, share, List.of());
  }

  private OpenLine ingredient(
      Line line, int index, Set<String> flours, Weighing weighing, String at) {
    IngredientRef reference = Objects.requireNonNull(line.ingredient());
    String named = at + "/ingredient";
    Ingredient ingredient = under(named, () -> larder.ingredient(reference));
    weighing.remarkOnName(reference, named);
    Spread fixed =
        line.quantity().isMeasured()
            ? under(weighing.at(), () -> weighing.grams(line.quantity(), ingredient, line.state()))
            : Spread.zero();
    double share = ingredient.isFlour() || flours.contains(ingredient.id()) ? 1 : 0;
    return new OpenLine(index, line, ingredient, null, fixed, share, weighing.notes().sources());
  }

  private static <T> T under(String at, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      throw refusal.under(at);
    }
  }
}
