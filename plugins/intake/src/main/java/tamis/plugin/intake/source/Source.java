package tamis.plugin.intake.source;

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
public record Source(
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
  public record Piece(SourceLine source, @Nullable String part) {}

  /** The same in a language that it does not name itself. */
  Source orIn(@Nullable String language) {
    return tag != null
        ? this
        : new Source(page, title, lines, steps, yields, notes, language, recipes, document);
  }

  /** A page of text. */
  static Source page(List<SourceLine> page, @Nullable String tag, int recipes) {
    return new Source(page, null, List.of(), List.of(), List.of(), List.of(), tag, recipes, null);
  }

  /** A formula document by itself. */
  public static Source of(Map<?, ?> document, int recipes) {
    return new Source(
        List.of(), null, List.of(), List.of(), List.of(), List.of(), null, recipes, document);
  }

  /** Whether there is nothing but the document. */
  public boolean isDocument() {
    return document != null && isPage() && page.isEmpty();
  }

  public boolean isPage() {
    return lines.isEmpty() && steps.isEmpty() && title == null;
  }
}
