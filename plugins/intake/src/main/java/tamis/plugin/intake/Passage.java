package tamis.plugin.intake;

import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A line of the source that is no line of ingredients. */
public record Passage(
    @Described("Number of the line in the source, from 1") int line,
    @Described("What it is taken for") Kind kind,
    @Described("The line as it stands in the source") String text,
    @Described("Where it begins in the source, in characters") int start,
    @Described("Behind its last character") int end,
    @Described("Stage of the formula that was made of it") @Nullable String stage) {
  /** What a line is taken for. */
  public enum Kind {
    TITLE,
    YIELD,
    HEADING,
    STEP,
    NOTE
  }
}
