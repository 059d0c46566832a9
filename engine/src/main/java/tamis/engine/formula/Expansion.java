package tamis.engine.formula;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.BillRow;
import tamis.engine.formula.Batch.Part;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Limits;

/**
 * Makes a formula at a size: the one place where formulas are expanded. A line that names a formula
 * asks for its finished mass, so the part is made larger by its own losses.
 */
public final class Expansion {
  private final Limits limits;
  private final List<BatchLine> lines = new ArrayList<>();
  private final Notes notes = new Notes();

  private Expansion(Limits limits) {
    this.limits = limits;
  }

  /**
   * The batch of a formula; as written if {@code to} is null. Pointers begin with {@code /formula}
   * or {@code /to}.
   *
   * @throws Refusal with all faults of all parts
   */
  public static Batch expand(Larder larder, Limits limits, FormulaRef reference, @Nullable To to) {
    Drafting drafting = new Drafting(larder, limits);
    Draft draft = drafting.draft(reference, "/formula");
    Expansion expansion = new Expansion(limits);
    drafting.remarks().forEach(expansion.notes::add);
    Sizing.Size size = new Sizing(larder, draft, expansion.notes).size(to);
    return expansion.batch(draft, size);
  }

  /**
   * Refuses a document that cannot be made at any size: a circle, too many levels, no flour for its
   * percentages. Used before a document is kept.
   *
   * @throws Refusal with pointers relative to the document
   */
  public static void check(Larder larder, Limits limits, Formula document) {
    new Drafting(larder, limits).draft(FormulaRef.of(document), "");
  }

  private Batch batch(Draft draft, Sizing.Size size) {
    Part root = part(draft, "", Role.PART, size.factor(), 1);
    List<BillRow> bill = bill(lines);
    return new Batch(
        size.factor(),
        root,
        lines,
        bill,
        ByProducts.of(bill),
        size.limitedBy(),
        notes.remarks(),
        notes.sources());
  }

  private Part part(Draft draft, String path, Role role, double factor, double remaining) {
    List<BatchLine> own = new ArrayList<>();
    List<Part> parts = new ArrayList<>();
    for (Draft.DraftLine line : draft.lines()) {
      String at = path + Formula.linePointer(line.index());
      double stays = remaining * line.line().remaining();
      if (line.part() != null) {
        double inner = factor * line.grams().typical() / line.part().finished().typical();
        Role inside = line.line().role() == null ? Role.PART : line.line().role();
        parts.add(part(line.part(), at, inside, inner, stays));
      } else if (line.ingredient() != null) {
        own.add(add(line, line.ingredient(), at, factor, stays));
      }
    }
    return new Part(
        path,
        draft.formula(),
        role,
        factor,
        own,
        parts,
        draft.weighed().times(factor),
        draft.mass().times(factor),
        draft.madeUp().times(factor),
        draft.finished().times(factor),
        draft.flour() * factor);
  }

  private BatchLine add(
      Draft.DraftLine line, Ingredient ingredient, String at, double factor, double stays) {
    if (lines.size() >= limits.expandedLines()) {
      throw Refusal.of(
          FaultCode.TOO_MANY,
          "/formula",
          "over all its parts the batch has more than " + limits.expandedLines() + " lines");
    }
    for (Cited source : line.sources()) {
      notes.cite(
          source.table(),
          source.row(),
          source.source(),
          source.locator(),
          source.basis(),
          "/lines/" + lines.size() + "/grams");
    }
    Quantity written = line.line().quantity();
    BatchLine made =
        new BatchLine(
            at,
            ingredient,
            line.line(),
            line.grams().times(factor),
            written.isMeasured() ? written.times(factor) : null,
            stays,
            line.flour());
    lines.add(made);
    return made;
  }

  /** Each ingredient once, over all lines. */
  static List<BillRow> bill(List<BatchLine> lines) {
    Map<String, BillRow> bill = new LinkedHashMap<>();
    for (BatchLine line : lines) {
      Spread remaining = line.grams().times(line.remains());
      bill.merge(
          line.ingredient().id(),
          new BillRow(line.ingredient(), line.grams(), remaining, line.isAsNeeded()),
          (a, b) ->
              new BillRow(
                  a.ingredient(),
                  a.grams().plus(b.grams()),
                  a.remaining().plus(b.remaining()),
                  a.asNeeded() && b.asNeeded()));
    }
    return List.copyOf(bill.values());
  }
}
