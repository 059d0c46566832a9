package tamis.plugin.intake.page;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Tells headings of a page: those of its sections, and those of parts of the recipe. */
record Headings(Tongue tongue) {
  private static final int LONGEST = 60;
  private static final int MOST_WORDS = 6;
  private static final int MOST_WORDS_IN_CAPITALS = 5;

  /** "Ingredients", "Method:", "## Notes"; null if it is no heading of a section. */
  @Nullable Section section(String text) {
    @Nullable String bare = bare(text);
    for (Section of : Section.values()) {
      String kind = of.name().toLowerCase(Locale.ROOT);
      if (bare != null && tongue.knows(kind, Phrase.folded(bare))) {
        return of;
      }
    }
    return null;
  }

  /** "Method: beat all", "Mode.—Put …": the section that a line begins; null if it begins none. */
  @Nullable Section begun(Phrase phrase) {
    for (Section of : List.of(Section.STEPS, Section.NOTES)) {
      int behind = tongue.behind(of.name().toLowerCase(Locale.ROOT), phrase, 0);
      boolean point = phrase.is(behind, ".") && phrase.isDash(behind + 1);
      if (behind > 0 && (point || phrase.is(behind, ":")) && phrase.has(behind + 1)) {
        return of;
      }
    }
    return null;
  }

  /**
   * A part of the recipe.
   *
   * @param name of it; null if the heading has no words
   * @param plain whether it says so in words or by a colon, not only by how it is set
   */
  record Part(@Nullable String name, boolean plain) {}

  /**
   * "For the filling", "Topping:", "CRUST"; null if it is none.
   *
   * @param inCapitals whether ingredients are set in capitals there, too
   */
  @Nullable Part part(PageLine line, boolean inCapitals) {
    String text = line.text();
    if (text.length() > LONGEST || line.read().isMeasured()) {
      return null;
    }
    Tongue.@Nullable Match partFor = tongue.match("partfor", line.phrase(), 0);
    boolean few = line.words() <= MOST_WORDS;
    boolean forPart = partFor != null && few && !text.endsWith(".");
    boolean colon = text.endsWith(":") && few;
    boolean marked = text.startsWith("#") || (text.startsWith("**") && text.endsWith("**"));
    if (!forPart && !colon && !marked && (inCapitals || !isCapitals(line))) {
      return null;
    }
    Phrase phrase = line.phrase();
    String words = partFor != null ? phrase.text(partFor.next(), phrase.size()) : text;
    return new Part(bare(words), forPart || colon);
  }

  private static boolean isCapitals(PageLine line) {
    return line.words() <= MOST_WORDS_IN_CAPITALS
        && isInCapitals(line.text())
        && !(line.ends() && line.isDirection())
        && line.phrase().isWord(0);
  }

  static boolean isInCapitals(String text) {
    return text.equals(text.toUpperCase(Locale.ROOT));
  }

  /** The words of a heading without its marks; null if there are none. */
  private static @Nullable String bare(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && "#*=_-•: ".indexOf(text.charAt(from)) >= 0) {
      from++;
    }
    while (to > from && "#*=_-:. ".indexOf(text.charAt(to - 1)) >= 0) {
      to--;
    }
    return from == to ? null : text.substring(from, to);
  }
}
