package tamis.plugin.intake;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is to be read, whatever it came in.
 *
 * @param page lines of a page of text, which are told apart by what they say; empty of a recipe
 *     whose parts are named
 * @param title of a recipe whose parts are named, or null
 * @param lines of its ingredients
 * @param steps of its work
 * @param yields how much it gives, in words
 * @param notes what else it says
 * @param tag of its language, or null
 * @param recipes how many there are in the source
 * @param document the formula itself, where it came along; or null
 */
record Source(
    List<SourceLine> page,
    @Nullable String title,
    List<Piece> lines,
    List<SourceLine> steps,
    List<String> yields,
    List<SourceLine> notes,
    @Nullable String tag,
    int recipes,
    @Nullable Map<?, ?> document) {

  /** A line of ingredients with the part that it stands under. */
  record Piece(SourceLine source, @Nullable String part) {}

  static Source text(String text) {
    return new Source(
        SourceLine.of(text), null, List.of(), List.of(), List.of(), List.of(), null, 1, null);
  }

  /** The same, as one of several in its source. */
  Source of(int count) {
    return new Source(page, title, lines, steps, yields, notes, tag, count, document);
  }

  boolean isPage() {
    return lines.isEmpty() && steps.isEmpty() && title == null;
  }
}
