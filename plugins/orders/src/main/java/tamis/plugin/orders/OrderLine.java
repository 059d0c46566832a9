package tamis.plugin.orders;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.PanCount;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** So many of one thing at one size. */
@ExactlyOne({"portions", "pieces", "pans"})
public record OrderLine(
    @Described(value = "Id, id@revision, or the whole document", example = "coffee-layer-cake")
        FormulaRef formula,
    @Described(value = "Portions of one", moreThan = "0", atMost = "1000000", example = "12")
        @Nullable Double portions,
    @Described(value = "Pieces of one", moreThan = "0", atMost = "1000000", example = "24")
        @Nullable Double pieces,
    @Described(
            value = "Raw mass of a piece; that of the formula if left out",
            moreThan = "0 g",
            example = "420 g")
        @Nullable Mass pieceMass,
    @Described(value = "Pans of one", optional = true, fewest = 1, most = 100) List<PanCount> pans,
    @Described(
            value = "How many of them; one if left out",
            atLeast = "1",
            atMost = "100000",
            example = "3")
        @Nullable Integer count,
    @Described(value = "Name of the order line, once in a list", example = "table-7", most = 200)
        @Nullable String id) {

  public OrderLine {
    if (pieceMass != null && pieces == null) {
      throw Refusal.of(
          FaultCode.INCONSISTENT, "/pieceMass", "`pieceMass` is of `pieces`, which are not given");
    }
  }

  int number() {
    return count == null ? 1 : count;
  }

  Size size() {
    return new Size(portions, pieces, pieceMass, pans);
  }
}
