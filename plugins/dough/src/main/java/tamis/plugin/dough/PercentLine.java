package tamis.plugin.dough;

import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.record.Described;

/** An ingredient, or a part as a whole, as a percent of a flour. */
public record PercentLine(
    @Described("Id of the ingredient; left out for a part") @Nullable String ingredient,
    @Described("Id of the formula, where the line is a part as a whole") @Nullable String formula,
    @Described("Name of the ingredient or title of the part") String name,
    @Described("Whether it counts as flour") @Nullable Boolean flour,
    @Described(value = "To weigh", unit = "g") double grams,
    @Described(value = "Percent of the flour; left out where there is none", unit = "%")
        @Nullable Double percent) {

  static PercentLine of(BatchLine line, double grams, double flour) {
    return new PercentLine(
        line.ingredient().id(),
        null,
        line.ingredient().title("en"),
        line.flour() ? true : null,
        grams,
        Percent.of(grams, flour));
  }

  static PercentLine of(Part part, double grams, double flour) {
    return new PercentLine(
        null, part.formula().id(), part.formula().name(), null, grams, Percent.of(grams, flour));
  }
}
