package tamis.engine.formula;

import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;

/** What the product is packed in. */
public record Packaging(
    @Described(value = "Name of the item", example = "cake-box", most = 80) String item,
    @Described(value = "How much of it for the formula as written", example = "1 each")
        Quantity quantity) {}
