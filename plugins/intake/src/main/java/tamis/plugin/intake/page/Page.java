package tamis.plugin.intake.page;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.source.SourceLine;

/**
 * A page cut into its lines, each with what it is.
 *
 * @param title of the page, or null
 * @param portions or pieces that it gives; null if it does not say so in one number
 * @param lines all lines that are not blank, in their order
 */
public record Page(
    @Nullable String title, @Nullable Gives portions, @Nullable Gives pieces, List<Entry> lines) {

  /** A number of portions or pieces. */
  public record Gives(double number) {}

  /** What an entry is. */
  public enum Kind {
    TITLE,
    YIELD,
    HEADING,
    INGREDIENT,
    STEP,
    NOTE
  }

  /**
   * A line of the page.
   *
   * @param read what a line of ingredients says; null for every other
   * @param part heading that it stands under, or null
   */
  public record Entry(
      SourceLine source, Kind kind, @Nullable ReadLine read, @Nullable String part) {}

  /** How many lines of ingredients were understood by the words of the page's language. */
  public long understood() {
    return lines.stream().filter(e -> e.read() != null && isUnderstood(e.read())).count();
  }

  private static boolean isUnderstood(ReadLine read) {
    return read.found() != null && !read.found().foreign() && read.doubts().isEmpty();
  }

  /** How many lines of ingredients there are. */
  public long ingredients() {
    return lines.stream().filter(e -> e.kind() == Kind.INGREDIENT).count();
  }
}
