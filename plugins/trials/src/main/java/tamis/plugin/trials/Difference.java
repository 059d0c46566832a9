package tamis.plugin.trials;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A measure in which the trials differ. */
public record Difference(
    @Described(value = "Stage it belongs to; left out if to none", example = "syrup")
        @Nullable String stage,
    @Described(value = "What was measured", example = "temperature") String measure,
    @Described(value = "Ingredient, change or part that is meant", example = "butter-unsalted")
        @Nullable String of,
    @Described("Unit of the values and the window; empty for a bare number") String unit,
    @Described("What each trial says, in the order in which they were asked for")
        List<TrialValue> values,
    @Described("The window, corrected for here; of the newest revision among the trials")
        @Nullable MeasureWindow window,
    @Described("What it is held against") Against against,
    @Described(
            "The furthest any trial lies outside, in widths; without a window or a written figure,"
                + " how far apart the trials are")
        double distance,
    @Described("How much is one width, in the unit") double width,
    @Described(
            "How well it tells the outcomes apart: 1 wholly, 0 not at all or the wrong way round;"
                + " left out if there are too few trials")
        @Nullable Double separation,
    @Described(
            value =
                "How often chance alone would tell them apart as well (exact test on ranks), as a"
                    + " part of 1",
            unit = "1")
        @Nullable Double chance,
    @Described("Whether it tells of the outcome, such as a symptom, rather than of a cause")
        boolean effect) {
  public Difference {
    values = List.copyOf(values);
  }
}
