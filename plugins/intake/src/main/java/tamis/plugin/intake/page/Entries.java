package tamis.plugin.intake.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** The lines of a page that have been told apart so far, in their order. */
final class Entries {
  private final LineReader lines;
  private final Tongue tongue;
  private final Map<String, String> corrections;
  private final List<Page.Entry> entries = new ArrayList<>();
  private @Nullable String part;
  private boolean started;

  /**
   * @param corrections what stands instead of a line, by the line as written
   */
  Entries(LineReader lines, Map<String, String> corrections) {
    this.lines = lines;
    this.tongue = lines.tongue();
    this.corrections = corrections;
  }

  List<Page.Entry> all() {
    return entries;
  }

  int size() {
    return entries.size();
  }

  /** Whether there is a line of ingredients. */
  boolean started() {
    return started;
  }

  /** The part that further lines stand under; null for none. */
  void part(@Nullable String name) {
    part = name;
  }

  void add(SourceLine line, Page.Kind kind) {
    entries.add(new Page.Entry(line, kind, null, part));
  }

  /** "1 teaspoon vanilla or" leaves the next line open, too. */
  void ingredient(SourceLine line, ReadLine read) {
    started = true;
    ReadLine kept =
        isLeftOpen()
            ? read.doubted("the line before it ends with `or`: which is meant is left open")
            : read;
    entries.add(new Page.Entry(line, Page.Kind.INGREDIENT, kept, part));
  }

  /** Whether the last line of ingredients is set in capitals, so that they say nothing. */
  boolean isInCapitals() {
    boolean capitals = false;
    for (Page.Entry entry : entries) {
      boolean line = entry.kind() == Page.Kind.INGREDIENT;
      capitals = line ? Headings.isInCapitals(entry.source().text()) : capitals;
    }
    return capitals;
  }

  private boolean isLeftOpen() {
    if (entries.isEmpty() || last().kind() != Page.Kind.INGREDIENT) {
      return false;
    }
    Phrase before = Phrase.of(last().source().text(), tongue);
    return before.size() > 1 && tongue.match("or", before, before.size() - 1) != null;
  }

  /** Adds what a person wrote in place of a line; false if nobody did. */
  boolean corrected(SourceLine line) {
    @Nullable String instead = corrections.get(line.text());
    if (instead == null) {
      return false;
    }
    if (instead.equals("-")) {
      add(line, Page.Kind.NOTE);
      return true;
    }
    List<String> written =
        Arrays.stream(instead.split("\\|", -1))
            .map(String::strip)
            .filter(w -> !w.isEmpty())
            .toList();
    written.forEach(one -> ingredient(line, lines.read(one)));
    return !written.isEmpty();
  }

  /** Whether the last line breaks off within a sentence of a step. */
  boolean breaksOff() {
    if (entries.isEmpty()) {
      return false;
    }
    boolean prose = last().kind() == Page.Kind.STEP || last().kind() == Page.Kind.NOTE;
    Phrase before = Phrase.of(last().source().text(), tongue);
    int end = before.size() - 1;
    boolean joins =
        before.is(end, ",")
            || tongue.match("and", before, end) != null
            || tongue.match("or", before, end) != null
            || tongue.match("of", before, end) != null;
    return prose && end > 2 && joins;
  }

  private Page.Entry last() {
    return entries.get(entries.size() - 1);
  }
}
