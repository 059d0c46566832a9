package tamis.plugin.timeline;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Packaging;
import tamis.engine.formula.ShelfLife;
import tamis.engine.formula.Stage;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Measures;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.record.Limit;

/** A formula by name or as its whole document, and how much of it is made. */
@ExactlyOne({"formula", "lines"})
public record WantedFormula(
    @Described(value = "Id, or id@revision; or give the document", example = "brioche")
        @Nullable FormulaRef formula,
    @Described("How much of it; as written if left out") @Nullable To to,
    @Described(
            value = "How many batches of that size; one unless told",
            atLeast = "1",
            atMost = "500",
            example = "3")
        @Nullable Integer count,
    @Described(value = "Of a document: its id", example = "brioche", most = 80) @Nullable String id,
    @Described(value = "Of a document: its title", example = "Brioche", most = 400)
        @Nullable String title,
    @Described("Of a document: whose measures are meant") @Nullable Measures measures,
    @Described(
            value = "Of a document: ingredients and sub-formulas",
            optional = true,
            limit = Limit.LINES)
        List<Line> lines,
    @Described("Of a document: what it gives as written") @Nullable Yield yield,
    @Described(value = "Of a document: steps of work", optional = true, most = 200)
        List<Stage> stages,
    @Described(value = "Of a document: how long it keeps", optional = true, most = 20)
        List<ShelfLife> shelfLife,
    @Described(value = "Of a document: what it is packed in", optional = true, most = 100)
        List<Packaging> packaging,
    @Described(value = "Of a document: what counts as flour", optional = true, most = 100)
        List<IngredientRef> flour,
    @Described(value = "Of a document: notes for the baker", most = 20_000) @Nullable String notes,
    @Described(value = "Of a document: where it comes from", most = 2_000)
        @Nullable String origin) {

  public WantedFormula {
    Faults faults = new Faults();
    if (formula == null) {
      if (lines.isEmpty()) {
        faults.add(FaultCode.MISSING, "/lines", "`lines` needs at least 1 entry, has 0");
      } else {
        faults.gather("", () -> document(id, title, measures, lines, yield, stages, flour));
      }
    } else {
      refuseBeside(formula, "id", id, faults);
      refuseBeside(formula, "title", title, faults);
      refuseBeside(formula, "measures", measures, faults);
      refuseBeside(formula, "yield", yield, faults);
      refuseBeside(formula, "stages", stages.isEmpty() ? null : "a list", faults);
    }
    faults.refuseIfAny();
  }

  private static void refuseBeside(
      FormulaRef formula, String name, @Nullable Object value, Faults faults) {
    if (value != null) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              "/" + name,
              String.valueOf(value),
              "`formula` alone, or a whole document",
              "`" + name + "` belongs to a document, but formula `" + formula + "` is named"));
    }
  }

  /** What only a person reads of a document is left out: it changes no time. */
  private static Formula document(
      @Nullable String id,
      @Nullable String title,
      @Nullable Measures measures,
      List<Line> lines,
      @Nullable Yield yield,
      List<Stage> stages,
      List<IngredientRef> flour) {
    return new Formula(
        id, title, measures, lines, yield, stages, List.of(), List.of(), flour, null, null);
  }

  /** The formula, whichever way it was given. */
  FormulaRef reference() {
    return formula != null
        ? formula
        : FormulaRef.of(document(id, title, measures, lines, yield, stages, flour));
  }

  /** A formula of which so many batches are made. */
  static WantedFormula of(FormulaRef formula, @Nullable To to, @Nullable Integer count) {
    @Nullable Formula document = formula.object();
    if (document == null) {
      return new WantedFormula(
          formula, to, count, null, null, null, List.of(), null, List.of(), List.of(), List.of(),
          List.of(), null, null);
    }
    return new WantedFormula(
        null,
        to,
        count,
        document.id(),
        document.title(),
        document.measures(),
        document.lines(),
        document.yield(),
        document.stages(),
        document.shelfLife(),
        document.packaging(),
        document.flour(),
        document.notes(),
        document.origin());
  }
}
