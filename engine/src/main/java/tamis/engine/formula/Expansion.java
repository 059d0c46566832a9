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
  /** More than this of one ingredient nobody bakes: a million tonnes. */
  private static final double MOST_GRAMS = 1e12;

  private final String size;
  private final List<BatchLine> lines = new ArrayList<>();
  private final Notes notes = new Notes();

  /**
   * @param size pointer of what makes the batch as large as it is
   */
  private Expansion(String size) {
    this.size = size;
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
    Expansion expansion = new Expansion(to == null ? "/formula" : "/to");
    drafting.remarks().forEach(expansion.notes::add);
    boolean inline = reference.object() != null;
    Sizing.Size size = new Sizing(larder, draft, inline, expansion.notes).size(to);
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
    refuseHuge(line, factor);
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

  private void refuseHuge(Draft.DraftLine line, double factor) {
    Quantity written = line.line().quantity();
    double most = Math.max(line.grams().high(), written.isMeasured() ? written.high() : 0) * factor;
    if (!(most <= MOST_GRAMS)) {
      throw Refusal.of(
          FaultCode.OUT_OF_BOUNDS,
          size,
          "this comes to more of `" + line.line().name() + "` than is worked out: 1e12 g");
    }
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
