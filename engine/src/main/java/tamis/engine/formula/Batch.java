package tamis.engine.formula;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;

/**
 * A formula made at a size. Masses are grams at mixing unless a name says otherwise.
 *
 * @param factor times the formula as written; of a formula wholly in percent, times 100 g of flour
 * @param root the formula itself as a part
 * @param lines every ingredient line of every part, in the order of work
 * @param bill each ingredient once, over all parts, in the order in which it first comes
 * @param byProducts what is left over of eggs and fruit that are used in part
 * @param limitedBy what on hand is used up first, if the batch was sized by stock
 * @param remarks what the baker should know about quantities and sizes
 * @param sources rows of tables that masses rest on; pointers are those of {@code lines}
 */
public record Batch(
    double factor,
    Part root,
    List<BatchLine> lines,
    List<BillRow> bill,
    List<ByProduct> byProducts,
    @Nullable String limitedBy,
    List<Remark> remarks,
    List<Cited> sources) {

  public Batch {
    lines = List.copyOf(lines);
    bill = List.copyOf(bill);
    byProducts = List.copyOf(byProducts);
    remarks = List.copyOf(remarks);
    sources = List.copyOf(sources);
  }

  /**
   * The batch with other grams in some lines; masses, bill and by-products follow, the factor and
   * what the grams rest on stay. Lines within a part change what the part comes to.
   *
   * @param grams of each line; of one that does not change, its own
   */
  public Batch withGrams(Function<BatchLine, Spread> grams) {
    return Recount.of(this, 1, grams);
  }

  /** So many times this batch, still limited by what limited it. */
  public Batch times(double ratio) {
    return Recount.of(this, ratio, line -> line.grams().times(ratio));
  }

  /** What all that stays in the batch is made of, before any of its water is baked off. */
  public Composition composition() {
    return Contents.of(this).composition();
  }

  /**
   * One formula of the batch.
   *
   * @param path JSON Pointer of the formula line it stands for, from the root; empty for the root
   * @param formula the document
   * @param role what it is within its parent
   * @param factor times the formula as written
   * @param lines its own ingredient lines
   * @param parts its sub-formulas
   * @param weighed all that is weighed in, sub-formulas at their finished mass
   * @param mass what stays of it at mixing, after {@code remains}
   * @param madeUp after make-up: the raw scaling weight
   * @param finished after baking and cooling
   * @param flour total flour, with that of joined parts
   */
  public record Part(
      String path,
      Formula formula,
      Role role,
      double factor,
      List<BatchLine> lines,
      List<Part> parts,
      Spread weighed,
      Spread mass,
      Spread madeUp,
      Spread finished,
      double flour) {
    public Part {
      lines = List.copyOf(lines);
      parts = List.copyOf(parts);
    }

    /** The line of this formula that one of its parts stands for. */
    public Line lineOf(Part inner) {
      String index = inner.path().substring(inner.path().lastIndexOf('/') + 1);
      return formula.lines().get(Integer.parseInt(index));
    }
  }

  /**
   * One ingredient line at the size of the batch.
   *
   * @param path JSON Pointer of the line from the root formula, through the formula lines above it:
   *     {@code /lines/3/lines/0}
   * @param ingredient what it is
   * @param line as the formula says it
   * @param grams what is weighed; zero for "as needed"
   * @param quantity the line's own quantity at this size, in the unit as written; null for percent
   *     and as needed
   * @param remains the part that stays in the batch
   * @param flour whether it counts as flour here
   */
  public record BatchLine(
      String path,
      Ingredient ingredient,
      Line line,
      Spread grams,
      @Nullable Quantity quantity,
      double remains,
      boolean flour) {

    public boolean isAsNeeded() {
      return line.quantity().isAsNeeded();
    }
  }

  /** An ingredient over all parts: what is weighed, and what stays in the batch. */
  public record BillRow(Ingredient ingredient, Spread grams, Spread remaining, boolean asNeeded) {}

  /** What is left over of an ingredient. */
  public record ByProduct(String ingredient, double grams, String from) {}
}
