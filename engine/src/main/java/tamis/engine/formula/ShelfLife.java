package tamis.engine.formula;

import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;

/** How long the product keeps at one temperature. */
public record ShelfLife(
    @Described(value = "Temperature of storage", example = "4 °C") Temperature at,
    @Described(name = "for", value = "How long", example = "5 d") TimeSpan keeps) {}
