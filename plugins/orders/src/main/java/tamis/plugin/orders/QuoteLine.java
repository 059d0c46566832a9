package tamis.plugin.orders;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.PanCount;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** What a customer asks for: something on offer, by its id alone. */
@ExactlyOne({"portions", "pieces", "pans"})
public record QuoteLine(
    @Described(value = "Id of what is on offer", example = "coffee-layer-cake", most = 80)
        String formula,
    @Described(value = "Portions of one", moreThan = "0", atMost = "10000", example = "12")
        @Nullable Double portions,
    @Described(value = "Pieces of one", moreThan = "0", atMost = "10000", example = "24")
        @Nullable Double pieces,
    @Described(value = "Pans of one", optional = true, fewest = 1, most = 20) List<PanCount> pans,
    @Described(
            value = "How many of them; one if left out",
            atLeast = "1",
            atMost = "10000",
            example = "2")
        @Nullable Integer count,
    @Described(value = "Name of the order line, once in a list", example = "table-7", most = 200)
        @Nullable String id) {

  int number() {
    return count == null ? 1 : count;
  }

  Size size() {
    return new Size(portions, pieces, null, pans);
  }
}
