package tamis.plugin.intake.source;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

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

  public static Source text(String text) {
    return new Source(
        SourceLine.of(text), null, List.of(), List.of(), List.of(), List.of(), null, 1, null);
  }

  /** The same, as one of several in its source. */
  public Source of(int count) {
    return new Source(page, title, lines, steps, yields, notes, tag, count, document);
  }

  public boolean isPage() {
    return lines.isEmpty() && steps.isEmpty() && title == null;
  }

  /** One of several recipes, from 1. */
  public static <T> T chosen(List<T> recipes, int which) {
    checked(which, recipes.size());
    return recipes.get(which - 1);
  }

  public static void checked(int which, int count) {
    if (which > count) {
      throw new Refusal(
          new Fault(
              FaultCode.NO_SUCH_VALUE,
              "/recipe",
              String.valueOf(which),
              "1 to " + count,
              "the source has "
                  + count
                  + (count == 1 ? " recipe" : " recipes")
                  + ", recipe "
                  + which
                  + " was asked for"));
    }
  }
}
