package tamis.engine.formula;

import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;

/** Sizes a batch by one ingredient over all parts, or by one line. */
final class LineSizing {
  private final Larder larder;
  private final Draft draft;
  private final Notes notes;

  LineSizing(Larder larder, Draft draft, Notes notes) {
    this.larder = larder;
    this.draft = draft;
    this.notes = notes;
  }

  double factor(FixedLine fixed) {
    String at = "/to/line";
    if (fixed.ingredient() != null) {
      Ingredient ingredient = ingredient(fixed.ingredient());
      double written = total(draft, ingredient.id(), 1);
      if (written <= 0) {
        throw refused(
            FaultCode.UNKNOWN_INGREDIENT,
            at + "/ingredient",
            ingredient.id(),
            "`"
                + ingredient.id()
                + "` is in no line of `"
                + draft.formula().name()
                + "` with a quantity");
      }
      return grams(fixed, ingredient, null) / written;
    }
    String path = String.valueOf(fixed.path());
    @Nullable Found found = find(draft, path, "", 1);
    if (found == null) {
      throw refused(
          FaultCode.NO_SUCH_VALUE,
          at + "/path",
          path,
          "no line at `"
              + path
              + "`; a path is written /lines/3 or, within a part, /lines/3/lines/0");
    }
    double written = found.line().grams().typical() * found.factor();
    if (written <= 0) {
      throw refused(
          FaultCode.NO_SIZE, at + "/path", path, "the line at `" + path + "` weighs nothing");
    }
    return grams(fixed, found.line()) / written;
  }

  private Ingredient ingredient(IngredientRef reference) {
    try {
      return larder.ingredient(reference);
    } catch (Refusal refusal) {
      throw refusal.under("/to/line/ingredient");
    }
  }

  private double grams(FixedLine fixed, Draft.DraftLine line) {
    @Nullable Draft part = line.part();
    if (part == null) {
      return grams(fixed, Objects.requireNonNull(line.ingredient()), line.line().state());
    }
    String name = line.line().name();
    return positive(fixed, weighing -> FinishedMass.of(fixed.quantity(), part, name, weighing));
  }

  private double grams(FixedLine fixed, Ingredient ingredient, @Nullable String state) {
    return positive(fixed, weighing -> weighing.grams(fixed.quantity(), ingredient, state));
  }

  private double positive(FixedLine fixed, Function<Weighing, Spread> weigh) {
    String at = "/to/line/quantity";
    double grams;
    try {
      grams = weigh.apply(new Weighing(draft.formula().measures(), at, "/factor", notes)).typical();
    } catch (Refusal refusal) {
      throw refusal.under(at);
    }
    if (grams > 0) {
      return grams;
    }
    throw refused(FaultCode.OUT_OF_BOUNDS, at, fixed.quantity().text(), "must be more than 0");
  }

  /** Grams of an ingredient in one time the draft, over all parts. */
  static double total(Draft draft, String ingredient, double factor) {
    double total = 0;
    for (Draft.DraftLine line : draft.lines()) {
      if (line.ingredient() != null && line.ingredient().id().equals(ingredient)) {
        total += line.grams().typical() * factor;
      } else if (line.part() != null) {
        double inner = factor * line.grams().typical() / line.part().finished().typical();
        total += total(line.part(), ingredient, inner);
      }
    }
    return total;
  }

  private record Found(Draft.DraftLine line, double factor) {}

  private static @Nullable Found find(Draft draft, String path, String at, double factor) {
    for (Draft.DraftLine line : draft.lines()) {
      String here = at + Formula.linePointer(line.index());
      if (here.equals(path)) {
        return new Found(line, factor);
      }
      if (line.part() != null && path.startsWith(here + "/")) {
        double inner = factor * line.grams().typical() / line.part().finished().typical();
        return find(line.part(), path, here, inner);
      }
    }
    return null;
  }

  private static Refusal refused(FaultCode code, String at, String given, String message) {
    return new Refusal(new Fault(code, at, given, null, message));
  }
}
