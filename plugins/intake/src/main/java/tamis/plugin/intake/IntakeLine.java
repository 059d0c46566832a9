package tamis.plugin.intake;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** One line of ingredients as it was read. */
public record IntakeLine(
    @Described("Number of the line in the source, from 1") int line,
    @Described("The line as it stands in the source") String text,
    @Described("Where it begins in the source, in characters") int start,
    @Described("Behind its last character") int end,
    @Described("How much: a number, or {low, high} for a range") @Nullable Object quantity,
    @Described("Symbol of the unit; left out if there is none") @Nullable String unit,
    @Described("Whether it is taken as needed, in no amount") @Nullable Boolean asNeeded,
    @Described("What one package or can holds") @Nullable OtherMeasure size,
    @Described("The same quantity said once more, such as a weight in brackets")
        List<OtherMeasure> also,
    @Described("How the measure is filled: heaping, scant, about …") List<String> manner,
    @Described("Id of the ingredient; left out if it is not told for certain")
        @Nullable String ingredient,
    @Described("Ids that may be meant, if it is not told for certain") List<String> candidates,
    @Described("The ingredient in the source's words, without quantity, unit and note")
        String asWritten,
    @Described("State in which it is measured: words before the ingredient") @Nullable String state,
    @Described("Work done after measuring, and notes of the source") @Nullable String preparation,
    @Described("Part of the page that it stands in") @Nullable String part,
    @Described(value = "What it weighs, if that is known", unit = "g") @Nullable Double grams,
    @Described("How plainly it is said: 1 is plain, below 0.6 look at it") double confidence) {

  /** A quantity beside the first. */
  public record OtherMeasure(
      @Described("A number, or {low, high} for a range") Object quantity,
      @Described("Symbol of the unit") String unit) {}
}
